//go:build js && wasm

// Command wasm is the bridge between the page and the core, and nothing else.
// It sets globalThis.moldwright with one function,
//
//	moldwright.call(op, request, blob) -> {reply, blobs}
//
// and then calls globalThis.moldwrightReady, where there is one; besides, hold and
// rest, which are told below. op and request
// are strings, blob is a Uint8Array or null; reply is a JSON string, blobs an
// array of Uint8Array. call never throws: wrong arguments and a fault inside
// the core come back as {"error":{"code":…,"message":…}}, and the next call
// works. What no Go program survives (memory at its end, a stack too deep) ends
// the instance; the caller then starts another.
package main

import (
	"encoding/json"
	"fmt"
	"runtime"
	"runtime/debug"
	"syscall/js"
	"unsafe"

	"moldwright/core/job"
	"moldwright/core/plan"
	"moldwright/core/trace"
	"moldwright/core/words"
)

// Collecting garbage stops the one thread there is, so it is put off while the
// heap is small: a plan leaves some 3 MB, the core itself holds about 10. Past
// the limit it is collected as usual. While a picture is held, a trace leaves
// 13 MB, and what the instance grows by it never gives back: the limit is then
// the picture and heldLimit. As a rule none of this comes to pass within a request:
// rest collects between two of them, as soon as restAfter has been allocated.
const (
	gcPercent = 400
	gcLimit   = 128 << 20
	heldLimit = 36 << 20
	restAfter = 6 << 20
)

func main() {
	debug.SetGCPercent(gcPercent)
	debug.SetMemoryLimit(gcLimit)
	js.Global().Set("moldwright", map[string]any{"call": js.FuncOf(call), "hold": js.FuncOf(hold), "rest": js.FuncOf(rest)})
	notify("moldwrightReady")
	select {}
}

// held is the blob that hold lays out, and kept the room for the blob of a
// call, used again by the next: a picture has some 50 MB, and the memory of an
// instance never shrinks. The core keeps nothing of a blob.
var held, kept []byte

func room(in *[]byte, n int) []byte {
	if n > cap(*in) {
		*in = nil // let go before the larger one is made
		*in = make([]byte, n)
	}
	*in = (*in)[:n]
	return *in
}

// hold is told above. What does not lie within the room is left out.
func hold(_ js.Value, args []js.Value) any {
	if len(args) < 1 || args[0].Type() != js.TypeNumber || !(args[0].Float() > 0) || args[0].Float() > 4*trace.MaxPixels {
		held = nil
		debug.SetMemoryLimit(gcLimit)
		runtime.GC() // its room is wanted for other things
		return nil
	}
	size := args[0].Int()
	if size != len(held) {
		room(&held, size)
		debug.SetMemoryLimit(int64(cap(held)) + heldLimit)
	}
	if len(args) < 3 || args[1].Type() != js.TypeNumber || !args[2].InstanceOf(js.Global().Get("Uint8Array")) {
		return nil
	}
	if at := args[1].Float(); at >= 0 && at < float64(size) {
		js.CopyBytesToGo(held[int(at):], args[2])
	}
	return nil
}

// memory is as it was when rest last looked, and collected all that had been
// allocated when it last did its work.
var (
	memory    runtime.MemStats
	collected uint64
)

// rest is called when nobody waits for an answer: it collects what the requests
// have left, where that is worth the while, so that none of them has to.
func rest(js.Value, []js.Value) any {
	if runtime.ReadMemStats(&memory); memory.TotalAlloc-collected >= restAfter {
		collected = memory.TotalAlloc
		runtime.GC()
	}
	return nil
}

// call answers one request from JavaScript.
func call(_ js.Value, args []js.Value) (answer any) {
	defer func() {
		if r := recover(); r != nil {
			answer = failed("internal", "", fmt.Sprintf("This did not work, and the fault is the program's own (%v). Your job is kept; change it a little and try again.", r))
		}
	}()
	for len(args) < 3 {
		args = append(args, js.Undefined())
	}
	op, request, data := args[0], args[1], args[2]
	if op.Type() != js.TypeString {
		return failed("arguments", "op", "The first argument, op, must be a string.")
	}
	if request.Type() != js.TypeString {
		return failed("arguments", "request", "The second argument, request, must be a string of JSON.")
	}
	var blob []byte
	switch {
	case data.IsNull() || data.IsUndefined():
	case data.Type() == js.TypeBoolean && data.Bool():
		blob = held
	default:
		if !data.InstanceOf(js.Global().Get("Uint8Array")) {
			return failed("arguments", "blob", "The third argument, blob, must be a Uint8Array, null, or true for the one that is held.")
		}
		blob = room(&kept, data.Length())
		js.CopyBytesToGo(blob, data)
	}
	reply, blobs := plan.Call(op.String(), []byte(request.String()), blob, progress)
	return result(reply, blobs)
}

func result(reply []byte, blobs [][]byte) any {
	out := make([]any, len(blobs))
	for i, b := range blobs {
		a := js.Global().Get("Uint8Array").New(len(b))
		js.CopyBytesToJS(a, b)
		out[i] = a
	}
	// nobody writes to the reply any more: it need not be copied
	return map[string]any{"reply": unsafe.String(unsafe.SliceData(reply), len(reply)), "blobs": out}
}

func failed(code, field, message string) any {
	reply, err := json.Marshal(map[string]any{"error": job.Fault{Code: code, Field: field, Message: words.Plain(message)}})
	if err != nil {
		reply = []byte(`{"error":{"code":"internal","message":"The fault could not be put into words."}}`)
	}
	return result(reply, nil)
}

func progress(fraction float64, words string) { notify("moldwrightProgress", fraction, words) }

// notify calls the named global if it is a function. What the listener throws
// is its own affair.
func notify(name string, args ...any) {
	defer func() { _ = recover() }()
	if f := js.Global().Get(name); f.Type() == js.TypeFunction {
		f.Invoke(args...)
	}
}

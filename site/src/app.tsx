// The workbench: the head with the pot's name and the tools, the verdict line,
// the drawing with the bar of the selected node, the panels beside it in the
// order of the work, and what to do next.
import { ClassBench, onClassBench } from "./class/bench";
import { ExerciseMode } from "./class/mode";
import { room } from "./class/room";
import { Drawing } from "./drawing";
import { NodeBar } from "./editor/bar";
import { save, takeFile, toLink } from "./files";
import { HelpCard } from "./help/card";
import { GuideBar, GuideOffer } from "./help/guidebar";
import { guided } from "./help/guide";
import { HelpButton, HelpWindow } from "./help/window";
import { Icon } from "./icons";
import { LanguageSwitch } from "./language-switch";
import { DamagedFile } from "./keep/damaged";
import { Versions } from "./keep/dialog";
import { ApartBar } from "./panels/apart";
import { CastingPanel } from "./panels/casting";
import { ClassPanel } from "./panels/class";
import { FormPanel } from "./panels/form";
import { PartsPanel } from "./panels/parts";
import { ReleasePanel } from "./panels/release";
import { SheetsPanel } from "./panels/sheets";
import { warm } from "./panels/sheets/request";
import { ToolingPanel } from "./panels/tooling";
import { Later } from "./later";
import { TableView } from "./reading";
import { AllSamples, FirstShelf } from "./shelf";
import { SpaceView } from "./space/view";
import { canonical } from "./canonical";
import { coreOf, edit, lookAt, now, redo, say, set, settle, steps, type Tab, undo } from "./state";
import { putLink, showAddress } from "./keep/tab";
import { PictureBench } from "./trace/bench";
import { TraceNext, underTrace } from "./trace/panel";
import { chosen, NextStep, VerdictLine } from "./verdict";
import { w } from "./words";

export function App() {
  const { plan, look, tab } = now(), trace = tab === "form" ? underTrace() : null;
  const opens = plan && (look.space ? look.what === "mold" : tab === "parts"), ofClass = tab === "class" && onClassBench();
  if (room().inside || room().opening) return <><ExerciseMode /><div class="below"><Below /></div><HelpCard /><HelpWindow /></>;
  return (
    <>
      <a class="skip" href="#panel">{w.skip}</a>
      <Later of={Head} />
      <VerdictLine />
      <main>
        <div class="bench">
          {ofClass ? <ClassBench /> : trace ? <PictureBench t={trace} /> : !plan ? <div class="drawing empty" /> : look.space ? <SpaceView plan={plan} /> : look.table ? <TableView plan={plan} scheme={chosen(plan)} /> : <Drawing plan={plan} scheme={chosen(plan)} />}
          {opens && !trace && !ofClass && <ApartBar plan={plan} />}
          {now().ready && !look.space && !opens && !trace && tab !== "class" && <NodeBar />}
          {plan && !trace && !ofClass && <Views />}
        </div>
        <Later of={Panels} />
        <div class="below">
          <Below />
          {trace ? <TraceNext of={trace} /> : tab !== "class" && !guided() && <Later of={NextStep} />}
          <Later of={GuideBar} />
        </div>
      </main>
      <DamagedFile />
      <HelpCard />
      <HelpWindow />
      <div class="drop" aria-hidden="true">{w.dropHere}</div>
    </>
  );
}

function Head() {
  const { job, saved, storage } = now();
  const back = steps().back, forth = steps().forth;
  const mark = saved === canonical(job) ? "yes" : storage ? "kept" : "nowhere";
  const link = async () => {
    const hash = await toLink("job", JSON.stringify(now().job));
    const address = location.href.replace(/#.*$/, "") + hash;
    try {
      await navigator.clipboard.writeText(address);
      say(w.linkCopied);
    } catch {
      showAddress(hash);
      putLink(hash);
      say(w.linkShown);
    }
  };
  return (
    <header>
      <h1>{w.title}</h1>
      <input
        class="name" aria-label={w.potName} placeholder={w.potName} value={job.name} maxLength={80} spellcheck={false}
        onInput={(e) => { const v = e.currentTarget.value; edit(() => w.changed(w.potName), "name", (j) => { j.name = v; }); }}
        onBlur={() => settle()}
      />
      <span class={`saved ${mark}`} title={mark === "kept" ? w.keep.keptHere : ""}>{mark === "yes" ? w.saved : mark === "kept" ? w.notSaved : w.keep.keptNowhere}</span>
      <LanguageSwitch />
      <div class="tools">
        <button type="button" disabled={back === null} title={back === null ? "" : w.undoStep(back)} onClick={undo}><Icon name="undo" />{w.undo}</button>
        <button type="button" disabled={forth === null} title={forth === null ? "" : w.redoStep(forth)} onClick={redo}><Icon name="redo" />{w.redo}</button>
        <AllSamples label={w.shelfOpen} />
        <Versions />
        <label class="button"><Icon name="open" />{w.open}
          <input type="file" class="away" onChange={(e) => {
            const input = e.currentTarget, file = input.files?.[0];
            if (file) void takeFile(file);
            input.value = "";
          }} />
        </label>
        <button type="button" onClick={() => void link()}><Icon name="link" />{w.link}</button>
        <button type="button" data-point="save" onClick={save}><Icon name="save" />{w.save}</button>
        <HelpButton />
      </div>
    </header>
  );
}

/** Drawing, tables or space: the three ways to see the bench. */
function Views() {
  const { space, table } = now().look;
  return (
    <div class="views" role="group" aria-label={w.views}>
      <button type="button" class="small" aria-pressed={!space && !table} onClick={() => lookAt({ space: false, table: false })}>{w.viewDrawing}</button>
      <button type="button" class="small" aria-label={w.reading.ask} aria-pressed={!space && table} onClick={() => lookAt({ space: false, table: true })}>{w.reading.view}</button>
      <button type="button" class="small" aria-pressed={space} onClick={() => lookAt({ space: true })}>{w.viewSpace}</button>
    </div>
  );
}

const tabs: Tab[] = ["form", "release", "parts", "tooling", "casting", "sheets", "class"];

function Panels() {
  const { tab, plan, ready } = now();
  const go = (e: KeyboardEvent) => {
    const step = e.key === "ArrowRight" ? 1 : e.key === "ArrowLeft" ? -1 : 0;
    if (!step) return;
    e.preventDefault();
    const to = tabs[(tabs.indexOf(now().tab) + step + tabs.length) % tabs.length]!;
    set({ tab: to });
    document.getElementById(`tab-${to}`)?.focus();
  };
  return (
    <div class="panels" id="panel">
      <div class="tabs" role="tablist" aria-label={w.title} onKeyDown={go}>
        {tabs.map((t) => (
          <button
            key={t} id={`tab-${t}`} type="button" role="tab" aria-selected={t === tab} aria-controls="tabpanel"
            tabIndex={t === tab ? 0 : -1} onClick={() => set({ tab: t })} onPointerEnter={t === "sheets" ? warm : undefined}
          >{w.tabs[t]}</button>
        ))}
      </div>
      <div key={tab} class="panel" id="tabpanel" role="tabpanel" aria-labelledby={`tab-${tab}`} tabIndex={-1}>
        {ready && tab === "form" && <>{!now().trace?.open && !now().svg && <><GuideOffer /><FirstShelf /></>}<FormPanel /></>}
        {plan && tab === "release" && <ReleasePanel plan={plan} />}
        {plan && tab === "parts" && <PartsPanel plan={plan} />}
        {plan && tab === "tooling" && <ToolingPanel plan={plan} />}
        {plan && tab === "casting" && <CastingPanel plan={plan} />}
        {plan && tab === "sheets" && <SheetsPanel />}
        {ready && tab === "class" && <ClassPanel />}
      </div>
    </div>
  );
}

/** What is under way, and what is said in passing. It takes room of its own, beneath
 *  the panels or above the foot of a narrow page, and so covers nothing. */
function Below() {
  const { slow, progress, toast } = now(), part = slow && progress && progress.fraction > 0 ? progress.fraction : null;
  return (
    <div class="passing">
      <div role="status">
        {slow && (
          <p class="underway"><span>{progress?.words || w.working}…</span>
            <progress aria-label={progress?.words || w.working} {...(part === null ? {} : { value: part })} />
            <button type="button" onClick={() => coreOf().stop()}>{w.stop}</button></p>
        )}
      </div>
      <Toast toast={toast} />
    </div>
  );
}

function Toast({ toast }: { toast: { words: string; undo: boolean } | null }) {
  return (
    <div class="toast" role="status">
      {toast && (
        <p>{toast.words}
          {toast.undo && <button type="button" onClick={() => { undo(); }}>{w.undo}</button>}
          <button type="button" onClick={() => set({ toast: null })}>{w.close}</button>
        </p>
      )}
    </div>
  );
}

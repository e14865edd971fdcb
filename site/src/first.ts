// The very first of the page: the worker's thread is set up while the browser
// still reads and runs the page's own code. The core takes it over (core.ts), and
// makes another from the same address where one ends.
export interface First { address: string; worker: Worker }

const source = document.getElementById("worker")!.textContent!.trim();
const address = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
const first: First = { address, worker: new Worker(address) };
Object.defineProperty(window, "moldwrightFirst", { value: first });

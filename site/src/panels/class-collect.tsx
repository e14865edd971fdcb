// Result files come in, many at once; the table stands on the bench, and goes out
// as CSV. A saved set can be opened here to be changed.
import { room } from "../class/room";
import { clearTable, collect, openSet, saveTable } from "../class/teacher";
import { Icon } from "../icons";
import { w } from "../words";

const texts = (list: FileList | null) => Promise.all([...(list ?? [])].map(async (f) => ({ from: { file: f.name }, text: await f.text() })));

export function ClassCollect() {
  const { table } = room();
  return (
    <>
      <div class="actions">
        <label class="button"><Icon name="open" />{w.class.openResults}
          <input type="file" multiple class="away" accept=".json,application/json" onChange={(e) => {
            const input = e.currentTarget;
            void texts(input.files).then((files) => { input.value = ""; if (files.length) return collect(files); });
          }} />
        </label>
        {table && <button type="button" onClick={saveTable}><Icon name="save" />{w.class.csv}</button>}
        {table && <button type="button" onClick={clearTable}>{w.class.empty}</button>}
        <label class="button">{w.class.openSet}
          <input type="file" class="away" accept=".json,application/json" onChange={(e) => {
            const input = e.currentTarget;
            void texts(input.files).then(([f]) => { input.value = ""; if (f) return openSet(f.text, f.from); });
          }} />
        </label>
      </div>
      <p class="hint">{w.class.dropResults}</p>
    </>
  );
}

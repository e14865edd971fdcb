// How the set is worked, and how it reaches the class: by link, as a file, on
// paper where the core makes such sheets.
import { useEffect, useState } from "preact/hooks";
import { Line } from "../class/fields";
import { room } from "../class/room";
import { openExercise, title } from "../class/session";
import { beginNew, copyLink, saveSet, saveSheet, settings, sheet } from "../class/teacher";
import { Check, Choice, Section } from "../fields";
import { Icon } from "../icons";
import { w } from "../words";

type Paper = "A4" | "Letter";
const papers = [["A4", "A4"], ["Letter", "Letter"]] as const;

/** Whether the core makes worksheets; null until it was asked. */
let offered: boolean | null = null;

export function ClassHandOut() {
  const { set, honest } = room();
  const [onPaper, setOnPaper] = useState(offered === true), [paper, setPaper] = useState<Paper>("A4");
  useEffect(() => {
    if (offered === null) void sheet("worksheet", { set: room().set }).then((b) => { offered = b !== null; setOnPaper(offered); });
  }, []);
  return (
    <>
      <Section title={w.class.howTitle}>
        <Line label={w.class.title} value={set.title} most={120} set={(title) => settings({ title })} />
        <Line label={w.class.note} value={set.note} most={200} set={(note) => settings({ note })} />
        <Check label={w.class.hints} hint={w.class.hintsHint} value={set.hints} pick={(hints) => settings({ hints })} />
        <Check label={w.class.solutions} hint={w.class.solutionsHint} value={set.solutions} pick={(solutions) => settings({ solutions })} />
        <Check label={w.class.shuffle} hint={w.class.shuffleHint} value={set.shuffle} pick={(shuffle) => settings({ shuffle })} />
      </Section>
      <Section title={w.class.handOut}>
        <div class="actions">
          <button type="button" class="primary" onClick={() => void copyLink()}><Icon name="link" />{w.class.copyLink}</button>
          <button type="button" class="save-set" onClick={() => void saveSet()}><Icon name="save" />{w.class.saveSet}</button>
          <button type="button" onClick={() => void openExercise(room().set, { file: title(room().set) }, true)}>{w.class.tryIt}</button>
          <button type="button" onClick={beginNew}>{w.class.cleared}</button>
        </div>
        {onPaper && (
          <div class="row ends">
            <Choice label={w.paper} value={paper} options={papers} pick={setPaper} />
            <div class="actions">
              <button type="button" onClick={() => void saveSheet("worksheet", paper)}>{w.class.worksheet}</button>
              <button type="button" onClick={() => void saveSheet("key", paper)}>{w.class.key}</button>
            </div>
          </div>
        )}
        <p class="hint">{w.class.handHint}</p>
        <p class="honest">{honest}</p>
      </Section>
    </>
  );
}

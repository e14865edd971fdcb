// The Class panel: set an exercise, hand it out, collect what comes back.
import { Section } from "../fields";
import { room } from "../class/room";
import { goOn } from "../class/session";
import { w } from "../words";
import { ClassCollect } from "./class-collect";
import { ClassDraw } from "./class-draw";
import { ClassHandOut } from "./class-handout";
import { ClassQuestions } from "./class-questions";

export function ClassPanel() {
  const { left, set, fault } = room();
  return (
    <>
      {left && <div class="actions"><button type="button" onClick={() => void goOn()}>{w.class.goOn(left)}</button></div>}
      <Section title={w.class.setTitle}><ClassDraw /></Section>
      <p class="bad" role="alert">{fault}</p>
      <Section title={w.class.questions}>{set.questions.length ? <ClassQuestions /> : <p class="hint">{w.class.noQuestions}</p>}</Section>
      {set.questions.length > 0 && <ClassHandOut />}
      <Section title={w.class.results}><ClassCollect /></Section>
    </>
  );
}

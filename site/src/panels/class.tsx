// The Class panel: set an exercise, hand it out, collect what comes back.
import { Section } from "../fields";
import { room } from "../class/room";
import { w } from "../words";
import { ClassCollect } from "./class-collect";
import { ClassDraw } from "./class-draw";
import { ClassHandOut } from "./class-handout";
import { KeptExercises, KeptSets } from "./class-kept";
import { ClassQuestions } from "./class-questions";

export function ClassPanel() {
  const { set, fault } = room();
  return (
    <>
      <KeptExercises />
      <Section title={w.class.setTitle}><ClassDraw /></Section>
      <p class="bad" role="alert">{fault}</p>
      <Section title={w.class.questions}>{set.questions.length ? <ClassQuestions /> : <p class="hint">{w.class.noQuestions}</p>}<KeptSets /></Section>
      {set.questions.length > 0 && <ClassHandOut />}
      <Section title={w.class.results}><ClassCollect /></Section>
    </>
  );
}

// The build's side of src/first-plan.ts: has the core plan the sample in every
// language, and takes what the replies have in common apart from what they say.

/** The first visit's plan, of a job that is complete; nameIn gives the pot's name in a language. */
export function firstPlan(core, job, languages, nameIn) {
  const replies = languages.map((language) => {
    const { reply } = core.call("plan", JSON.stringify({ language, job: { ...job, name: nameIn(language) } }), null);
    if (JSON.parse(reply).error) throw new Error(`the sample has no plan: ${reply}`);
    return reply.match(/"(?:[^"\\]|\\.)*"|[^"]+/g); // strings, and what lies between them
  });
  if (replies.some((r) => r.length !== replies[0].length)) throw new Error("the languages' plans of the sample differ in more than words");
  const common = [""], says = Object.fromEntries(languages.map((l) => [l, []]));
  replies[0].forEach((text, i) => {
    if (replies.every((r) => r[i] === text)) {
      common[common.length - 1] += text;
      return;
    }
    languages.forEach((l, k) => says[l].push(replies[k][i]));
    common.push("");
  });
  return { common, says };
}

// Worte der Hilfe am Ort: jedes Fachwort in ein bis drei Sätzen, die Formen, in denen
// die Seite es schreibt, und wo es im Auftrag auf der Werkbank steht. Manche nennen
// einen Brauch der Werkstätten, keines beruft sich auf eine Quelle.

import type { help as en } from "../en/help";
import type { Like } from "../like";

export const help: Like<typeof en> = {
  open: "Hilfe",
  title: "Hilfe",
  ask: (word) => `Was ist „${word}“?`,
  here: "Auf der Werkbank:",
  kinds: "Was sie sind:",
  allWords: "Alle Wörter",
  wordsTitle: "Fachwörter",
  wordsHint: "Ein punktiert unterstrichenes Wort und jedes Fragezeichen lässt sich an Ort und Stelle fragen.",
  find: "Ein Wort suchen",
  foundNone: "Kein solches Wort kommt auf dieser Seite vor.",
  groups: { release: "Lösen", mold: "Teile der Form", kit: "Was gedruckt wird", casting: "Gips, Schlicker und Gussstück", form: "Gestalt und Größe" },

  // wo ein Wort in diesem Auftrag steht; Werte kommen fertig, mit Einheit
  hereAbove: (z) => `${z} über dem Fuß`,
  hereBetween: (a, b) => `von ${a} bis ${b} über dem Fuß`,
  hereNone: "keine",
  hereNoSeam: "keine, die Form ist ein Teil",
  hereParts: (n) => (n === 1 ? "ein Teil" : `${n} Teile`),
  hereAsked: (draft) => `mindestens ${draft} verlangt`,
  hereDeepest: (depth, z) => `${depth} tief, ${z} über dem Fuß`,
  hereShare: (share, allowed) => `${share} des schlechtesten Teils, ${allowed} erlaubt`,
  hereNatches: (n, across) => (n === 1 ? `eine Kuppe, ${across} breit` : `${n} Kuppen, die erste ${across} breit`),
  hereHigh: (h) => `${h} hoch`,
  hereAcross: (d) => `${d} breit`,
  hereCount: (n) => (n === 1 ? "ein Stück" : `${n} Stücke`),
  hereStaves: (n) => (n === 1 ? "eines um jedes Positiv" : `${n} um jedes Positiv`),
  hereWater: (n) => `${n} Teile Wasser auf 100 Teile Gips`,
  hereWall: (wall, minutes) => `${wall} nass, nach ${minutes}`,
  hereBlock: (wall, base) => `Wand mindestens ${wall}, Boden ${base}`,
  hereTimes: (factor) => `das ${factor}-Fache des gebrannten Maßes`,
  hereForce: (force) => `sie halten ${force} stand`,
  hereLift: (mass) => `mit mindestens ${mass} niederhalten`,
  hereHeld: (volume) => `${volume} festgehalten`,

  terms: {
    pull: {
      name: "Zug", forms: ["Zug", "Zugs", "Züge", "Zugrichtung", "gezogen"],
      says: ["Der gerade Weg, auf dem ein Teil der Form das Gefäß verlässt. Ein Unterteil wird nach unten gezogen, ein Oberteil nach oben, ein Seitenteil nach außen."],
    },
    draft: {
      name: "Formschräge", forms: ["Formschräge", "Schräge"],
      says: ["Die Neigung, die ein Teil abgehen lässt: der Winkel zwischen Wand und Zug. Über 0° kommt das Teil sofort frei, bei 0° schleift es, unter 0° sitzt es fest.", "Übliche Praxis bei starrem Gips auf starrem Positiv: 1 bis 2° gewünscht, 3 bis 5° bequem."],
    },
    catch: {
      name: "Haken, Hinterschnitt", forms: ["hakt", "haken", "hakende", "Hinterschnitt", "Hinterschnitte"],
      says: ["Eine Stelle, an der das Gefäß einem abgehenden Teil im Weg steht. Ihre Tiefe ist die Verschiebung quer zum Zug, die den Gips löst.", "Weder Gips noch Druck gibt nach: Das Gefäß muss sich dort ändern, oder ein anderes Teil muss anders gezogen werden."],
    },
    rub: {
      name: "Schleifen", forms: ["schleift", "schleifen", "schleifend", "schleifende"],
      says: ["Eine so steile Wand, dass das Teil an ihr entlangschabt, statt sofort freizukommen. Ein Teil gilt als schleifend, wenn ein zu großer Anteil seiner Wand weniger als die kleinste Formschräge hat."],
    },
    trap: {
      name: "Falle", forms: ["Falle", "Fallen"],
      says: ["Raum neben dem Gefäß, den kein Zug löst, weder nach unten noch nach oben noch nach außen. Gips darin ist nie herauszuziehen: Das Gefäß muss sich ändern."],
    },
    letGo: {
      name: "Schwindung beim Lösen", forms: ["lederhart"],
      says: ["Bis das Gussstück lederhart ist, steif, aber noch feucht, ist es etwas geschwunden und steht vom Gips ab. Ein Haken, der nicht tiefer ist, schadet nicht; das starre Positiv gibt nicht nach."],
    },
    ripple: {
      name: "Rille", forms: ["Rille", "Rillen"],
      says: ["Eine gedruckte Wand ist von ihren Schichten gerillt, und jede Rille ist ein kleiner Hinterschnitt. Feinere Schichten, Schleifen in Zugrichtung oder einige Anstriche machen sie glatt."],
    },
    ghost: {
      name: "nächste Gestalt, Schattenlinie", forms: ["nächste Gestalt", "nächsten Gestalt", "Schattenlinie"],
      says: ["Die Gestalt, die der eigenen am nächsten ist und sich löst. Nur Radien ändern sich, so wenig wie möglich. Die gestrichelte Linie auf der Zeichnung ist diese Gestalt."],
    },
    pocket: {
      name: "Tasche", forms: ["Tasche", "Taschen"],
      says: ["Eine Stelle, die beim Eingießen Luft behält oder beim Umdrehen Schlicker. Die Form kippen oder rollen oder die Stelle entlüften."],
    },
    partingLine: {
      name: "Teilungslinie", forms: ["Teilungslinie", "Teilungslinien", "Teilungshöhe", "Teilungshöhen"],
      says: ["Die Linie am Gefäß, an der zwei Formteile sich treffen: Hier endet ein Zug und der nächste beginnt."],
    },
    seam: {
      name: "Naht", forms: ["Naht", "Nähte", "Nähten"],
      says: ["Die Fuge zwischen zwei Teilen und der Grat, den sie am Gussstück lässt. Sie ist immer zu sehen: Auf eine Kante des Gefäßes legen und verputzen, solange der Ton ungebrannt ist."],
    },
    lower: { name: "Unterteil", forms: ["Unterteil", "Unterteils"], says: ["Das Formteil unter dem Gefäß. Es wird gerade nach unten gezogen."] },
    upper: { name: "Oberteil", forms: ["Oberteil", "Oberteils"], says: ["Das Formteil über dem Gefäß. Es wird gerade nach oben gezogen."] },
    side: {
      name: "Seitenteil", forms: ["Seitenteil", "Seitenteile", "Seitenteilen", "Seitenteils"],
      says: ["Eines von zwei oder mehr Teilen, die um das Gefäß stehen, mit den Buchstaben A, B, C. Jedes wird nach außen gezogen, entlang der Mitte seines Anteils am Umfang."],
    },
    core: { name: "Kern", forms: ["Kern", "Kerns"], says: ["Das Teil, das das Innere eines voll gegossenen Gefäßes formt. Es wird nach oben herausgezogen."] },
    block: {
      name: "Block", forms: ["Block", "Blocks", "Gipsblock"],
      says: ["Der Gipskörper, den alle Teile zusammen bilden, wenn die Form geschlossen ist. Gips, der überall gleich dick ist, saugt überall gleich."],
    },
    natch: {
      name: "Schloss und Schlossmulde", forms: ["Schloss", "Schlösser", "Schlossmulde", "Schlossmulden"],
      says: ["Eine Kuppe in der Fläche des einen Teils und die Mulde dafür, die Schlossmulde, in der des anderen. Sie stehen ungleich verteilt, damit die Form nur auf eine Weise schließt."],
    },
    spare: {
      name: "Gießrand", forms: ["Gießrand", "Gießrands"],
      says: ["Raum über dem Rand für mehr Schlicker, damit der Rand bedeckt bleibt, während der Spiegel sinkt. Der Ton, der sich dort bildet, wird abgeschnitten."],
    },
    trimLine: {
      name: "Schnittlinie", forms: ["Schnittlinie"],
      says: ["Wo der Ton des Gießrands abgeschnitten wird, auf Höhe des Randes: nach dem Ablassen, wenn der Glanz vergangen ist, und bevor das Gussstück die Form verlässt."],
    },
    fillHole: {
      name: "Eingussloch", forms: ["Eingussloch"],
      says: ["Der Weg hinein für den Schlicker, wo ein Gefäß keinen offenen Rand hat. Seine Wand ist schräg, damit das Oberteil sich noch abheben lässt."],
    },
    drainHole: { name: "Ablaufloch", forms: ["Ablaufloch"], says: ["Ein Loch durch den Gips hinauf zum Fuß des Gefäßes, damit der Schlicker unten auslaufen kann."] },
    strap: {
      name: "Bandnuten", forms: ["Bandnuten", "Bandnut"],
      says: ["Nuten um die Außenseite der Seitenteile. Die Spannbänder liegen darin und können nicht abrutschen."],
    },
    positive: {
      name: "Positiv", forms: ["Positiv", "Positivs", "Positive"],
      says: ["Der gedruckte Körper, über den Gips gegossen wird: die Gestalt, die ein Formteil annehmen soll, um die Schwindung vergrößert."],
    },
    plug: {
      name: "Stopfen", forms: ["Stopfen"],
      says: ["Was die Öffnung über dem Rand formt. Meist ist er eins mit dem Positiv. Für einen Gießrand, der sich in einem Oberteil weitet, ist er ein eigenes Stück, das verzahnt auf dem Positiv steht und zuerst gezogen wird, bevor das Teil abgehoben wird."],
    },
    plate: {
      name: "Platte", forms: ["Platte"],
      says: ["Der flache Boden eines Positivs. Er formt die Nahtfläche des Teils mit ihren Schlössern, und die Schalungsteile stehen in seiner Nut."],
    },
    stave: {
      name: "Schalungsteil", forms: ["Schalungsteil", "Schalungsteile", "Schalung"],
      says: ["Ein Stück der Schalung, der Wand, die um ein Positiv gestellt wird, um den nassen Gips zu halten. Ein einzelnes wird nach oben abgezogen; zwei oder mehr gehen seitlich ab."],
    },
    collar: { name: "Kragen", forms: ["Kragen"], says: ["Ein Ring, der oben über die Schalungsteile geht und sie gegen den Druck des nassen Gipses zusammenhält."] },
    tray: {
      name: "Wanne", forms: ["Wanne"],
      says: ["Eine gedruckte Gießwanne für ein Seitenteil, hinten offen. Dort wird Gips eingegossen und eben abgezogen; lose Bretter schließen Enden und Seiten."],
    },
    clearance: {
      name: "Spiel", forms: ["Spiel"],
      says: ["Der Spalt zwischen Stücken, die ineinanderpassen. Auf üblichen Druckern gleiten 0,2 bis 0,3 mm je Seite, weniger klemmt."],
    },
    consistency: {
      name: "Wasser-Gips-Wert", forms: ["Wasser-Gips-Wert"],
      says: ["Teile Wasser auf 100 Teile Gips, nach Gewicht. Mehr Wasser gibt Gips, der mehr Wasser aufnimmt und schwächer ist.", "Alle Teile einer Form gleich anrühren, sonst wird die Wand des Gussstücks von Teil zu Teil verschieden."],
    },
    slip: {
      name: "Schlicker", forms: ["Schlicker", "Schlickers", "Gießschlicker"],
      says: ["Ton in Wasser, zum Gießen dünn gemacht. Der Gips saugt Wasser heraus, und an der Fläche der Form baut sich Ton auf."],
    },
    cast: {
      name: "Gussstück, Guss", forms: ["Gussstück", "Gussstücks", "Guss", "Güsse"],
      says: ["Der Ton, der in der Form bleibt, wenn der überschüssige Schlicker ausgegossen ist: das Gefäß vor dem Trocknen und Brennen."],
    },
    wall: {
      name: "Wand", forms: ["Wand", "Wandstärke"],
      says: ["Die Dicke des Tons, nass gemessen. Sie wächst mit der Wurzel der Zeit in der Form: Doppelt so dick dauert viermal so lang."],
    },
    bands: {
      name: "Spannbänder", forms: ["Spannbänder", "Spannband", "Bänder", "Band"],
      says: ["Was eine mehrteilige Form geschlossen hält, solange Schlicker darin ist, denn Schlicker drückt die Teile auseinander. Vor dem Füllen anlegen."],
    },
    flotation: {
      name: "Aufschwimmen", forms: ["Aufschwimmen"],
      says: ["Nasser Gips hebt ein hohles Positiv, wie Wasser ein Boot hebt. Vor dem Gießen an der Platte befestigen oder beschweren."],
    },
    shrinkage: {
      name: "Schwindung", forms: ["Schwindung", "Trockenschwindung", "Brennschwindung", "Gesamtschwindung"],
      says: ["Ton wird beim Trocknen kleiner und beim Brennen noch einmal. Trocknen bezieht sich auf die nasse Länge, Brennen auf die trockene, also lassen sich die zwei Prozentwerte nicht einfach addieren."],
    },
    oversize: {
      name: "Übermaß", forms: ["Übermaß", "vergrößert"],
      says: ["Wie viel größer die Form ist als das gebrannte Gefäß, damit dieses richtig herauskommt. Ton, der um 12 % schwindet, braucht 113,6 %, nicht 112 %."],
    },
    testBar: {
      name: "Schwindungsstab", forms: ["Schwindungsstab", "Schwindungsstäbe", "Schwindungsstäben", "Stab", "Stäbe"],
      says: ["Ein Stab aus dem eigenen Ton mit einer markierten Länge, nass, trocken und gebrannt gemessen. Er sagt, mit welcher Schwindung zu rechnen ist."],
    },
    foot: { name: "Fuß", forms: ["Fuß", "Fußes"], says: ["Worauf das Gefäß steht. Jede Höhe wird von seiner tiefsten Stelle aus gemessen."] },
    section: {
      name: "Ansicht und Schnitt", forms: ["Ansicht", "Schnitt"],
      says: ["Links der Achse das Gefäß von der Seite gesehen, rechts davon Gefäß und Form, als wären sie mitten durchgeschnitten."],
    },
    node: {
      name: "Knoten", forms: ["Knoten"],
      says: ["Ein Punkt, durch den das Profil läuft. Eine Ecke ist scharf, ein runder Knoten ist rund; zwischen zwei Ecken ist die Wand gerade."],
    },
  },
};

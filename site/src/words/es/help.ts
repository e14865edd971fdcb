// Spanish words of the help in place: each word of the trade in one to three
// sentences, the forms in which the page writes it, and where it stands in the job
// on the bench. Several speak of a practice of workshops, none claims a source.

export const help = {
  open: "Ayuda",
  title: "Ayuda",
  ask: (word: string) => `¿Qué es «${word}»?`,
  here: "En el banco:",
  kinds: "Cuáles son:",
  allWords: "Todas las palabras",
  wordsTitle: "Palabras del oficio",
  wordsHint: "Toda palabra con una línea de puntos debajo, y todo signo de interrogación, se puede preguntar donde está.",
  find: "Buscar una palabra",
  foundNone: "No se usa en esta página ninguna palabra así.",
  groups: { release: "Desmoldar", mold: "Partes del molde", kit: "Lo que se imprime", casting: "Yeso, barbotina y pieza colada", form: "Forma y tamaño" },

  // where a word stands in this job; values come formatted, with their units
  hereAbove: (z: string) => `a ${z} sobre el pie`,
  hereBetween: (a: string, b: string) => `de ${a} a ${b} sobre el pie`,
  hereNone: "ninguno",
  hereNoSeam: "ninguna: el molde es una sola parte",
  hereParts: (n: number) => (n === 1 ? "una parte" : `${n} partes`),
  hereAsked: (draft: string) => `se pide al menos ${draft}`,
  hereDeepest: (depth: string, z: string) => `${depth} de profundidad, a ${z} sobre el pie`,
  hereShare: (share: string, allowed: string) => `${share} de la peor parte, se admite ${allowed}`,
  hereNatches: (n: number, across: string) => (n === 1 ? `una cúpula, de ${across} de diámetro` : `${n} cúpulas, la primera de ${across} de diámetro`),
  hereHigh: (h: string) => `${h} de alto`,
  hereAcross: (d: string) => `${d} de diámetro`,
  hereCount: (n: number) => (n === 1 ? "una pieza" : `${n} piezas`),
  hereStaves: (n: number) => (n === 1 ? "una alrededor de cada positivo" : `${n} alrededor de cada positivo`),
  hereWater: (n: string) => `${n} partes de agua por 100 de yeso`,
  hereWall: (wall: string, minutes: string) => `${wall} en húmedo, tras ${minutes}`,
  hereBlock: (wall: string, base: string) => `pared de al menos ${wall}, base ${base}`,
  hereTimes: (factor: string) => `${factor} veces el tamaño cocido`,
  hereForce: (force: string) => `aguantan ${force}`,
  hereLift: (mass: string) => `sujetar con al menos ${mass}`,
  hereHeld: (volume: string) => `${volume} retenidos`,

  terms: {
    pull: {
      name: "tiro", forms: ["tiro", "tiros"],
      says: ["El camino recto por el que una parte del molde deja la vasija. De una parte inferior se tira hacia abajo, de una superior hacia arriba, de una lateral hacia fuera."],
    },
    draft: {
      name: "ángulo de salida", forms: ["ángulo de salida", "ángulos de salida"],
      says: ["La pendiente que deja salir una parte: el ángulo entre la pared y el tiro. Por encima de 0° la parte se suelta enseguida, a 0° roza, por debajo de 0° queda retenida.", "Práctica común con yeso rígido sobre un positivo rígido: de 1 a 2° es lo deseado, de 3 a 5° lo cómodo."],
    },
    catch: {
      name: "enganche, contrasalida", forms: ["engancha", "enganchan", "enganche", "engancharía", "engancharse", "contrasalida", "contrasalidas"],
      says: ["Un lugar donde la vasija estorba a una parte de la que se tira. Su profundidad es el desplazamiento a través del tiro que liberaría el yeso.", "Ni el yeso ni lo impreso ceden: la forma debe cambiar ahí, o hay que tirar de otra parte en otro sentido."],
    },
    rub: {
      name: "rozar", forms: ["roza", "rozan", "rozar", "roce"],
      says: ["Una pared tan vertical que la parte raspa a lo largo de ella en vez de soltarse enseguida. Se dice que una parte roza cuando una porción demasiado grande de su pared tiene menos del ángulo de salida mínimo."],
    },
    trap: {
      name: "trampa", forms: ["trampa", "trampas"],
      says: ["Espacio junto a la vasija que ningún tiro libera, ni hacia abajo, ni hacia arriba, ni hacia fuera. El yeso que haya en él no se puede sacar nunca: la forma debe cambiar."],
    },
    letGo: {
      name: "contracción al desmoldar", forms: ["dureza de cuero"],
      says: ["Cuando llega a la dureza de cuero, firme pero aún húmeda, la pieza colada se ha contraído un poco y se separa del yeso. Un enganche no más profundo que eso se perdona; el positivo rígido no perdona nada."],
    },
    ripple: {
      name: "onda", forms: ["onda", "ondas"],
      says: ["Una pared impresa tiene ondas por sus capas, y cada onda es una pequeña contrasalida. Capas más finas, lijar a lo largo del tiro o unas manos de sellador la dejan lisa."],
    },
    ghost: {
      name: "forma más próxima, línea fantasma", forms: ["forma más próxima", "línea fantasma"],
      says: ["La forma más cercana a la suya que se desmolda. Solo cambian los radios, y lo menos posible. La línea discontinua del dibujo es esa forma."],
    },
    pocket: {
      name: "bolsa", forms: ["bolsa", "bolsas"],
      says: ["Un lugar que retiene aire al verter la barbotina, o barbotina al dar la vuelta al molde. Incline o gire el molde, o dé salida de aire al lugar."],
    },
    partingLine: {
      name: "línea de partición", forms: ["línea de partición", "líneas de partición", "altura de partición", "alturas de partición"],
      says: ["La línea de la vasija donde se juntan dos partes del molde: aquí acaba un tiro y empieza el siguiente."],
    },
    seam: {
      name: "costura", forms: ["costura", "costuras"],
      says: ["La junta entre dos partes, y la cresta que deja en la pieza colada. Siempre se ve: póngala a lo largo de una arista de la forma, y recórtela mientras la arcilla esté sin cocer."],
    },
    lower: { name: "parte inferior", forms: ["parte inferior"], says: ["La parte del molde bajo la vasija. Se tira de ella recto hacia abajo."] },
    upper: { name: "parte superior", forms: ["parte superior"], says: ["La parte del molde sobre la vasija. Se tira de ella recto hacia arriba."] },
    side: {
      name: "parte lateral", forms: ["parte lateral", "partes laterales"],
      says: ["Una de las dos o más partes que rodean la vasija, con las letras A, B, C. De cada una se tira hacia fuera, por el centro de su porción de la vuelta."],
    },
    core: { name: "macho", forms: ["macho"], says: ["La parte que da forma al interior de una vasija que se cuela maciza. Se saca de ella hacia arriba."] },
    block: {
      name: "bloque", forms: ["bloque"],
      says: ["El cuerpo de yeso que forman juntas todas las partes con el molde cerrado. Un yeso de grosor uniforme absorbe de manera uniforme."],
    },
    natch: {
      name: "llave y alojamiento", forms: ["llave", "llaves", "alojamiento", "alojamientos"],
      says: ["Una cúpula en la cara de una parte y el hueco para ella, el alojamiento, en la cara de la otra. Están a distancias desiguales, para que el molde cierre de una sola manera."],
    },
    spare: {
      name: "reserva", forms: ["reserva"],
      says: ["Espacio sobre el borde para más barbotina, de modo que el borde siga cubierto mientras baja el nivel. La arcilla que se forma ahí se corta."],
    },
    trimLine: {
      name: "línea de corte", forms: ["línea de corte"],
      says: ["Donde se corta la arcilla de la reserva, a ras del borde: después de vaciar, cuando se ha ido el brillo, y antes de que la pieza deje el molde."],
    },
    fillHole: {
      name: "orificio de llenado", forms: ["orificio de llenado"],
      says: ["La entrada de la barbotina cuando una forma no tiene borde abierto. Su pared es cónica, para que la parte superior aún se pueda levantar."],
    },
    drainHole: { name: "orificio de vaciado", forms: ["orificio de vaciado"], says: ["Un orificio a través del yeso hasta el pie de la vasija, para que la barbotina salga por debajo."] },
    strap: {
      name: "ranuras para cinta", forms: ["ranuras para cinta", "ranura para cinta"],
      says: ["Ranuras alrededor de las partes laterales, por fuera. Las cintas se alojan en ellas y no se pueden escurrir."],
    },
    positive: {
      name: "positivo", forms: ["positivo", "positivos"],
      says: ["El cuerpo impreso sobre el que se vierte el yeso: la forma que debe tomar una parte del molde, agrandada según la contracción."],
    },
    plug: {
      name: "tapón", forms: ["tapón"],
      says: ["Lo que da forma a la abertura sobre el borde. Casi siempre es uno con el positivo. Para una reserva que se ensancha en una parte superior es una pieza aparte, encajada en el positivo, y se saca primero, antes de levantar la parte."],
    },
    plate: {
      name: "placa", forms: ["placa"],
      says: ["La base plana de un positivo. Da forma a la cara de costura de la parte, con sus llaves, y las piezas de encofrado se apoyan en su ranura."],
    },
    stave: {
      name: "pieza de encofrado", forms: ["pieza de encofrado", "piezas de encofrado", "encofrado"],
      says: ["Una pieza del encofrado, la pared que se pone alrededor de un positivo para contener el yeso fresco. Una sola se saca hacia arriba; dos o más se quitan de lado."],
    },
    collar: { name: "collarín", forms: ["collarín"], says: ["Un anillo que se pone sobre lo alto de las piezas de encofrado y las mantiene juntas contra el empuje del yeso fresco."] },
    tray: {
      name: "bandeja", forms: ["bandeja"],
      says: ["Un cuerpo impreso para una parte lateral, abierto por detrás. Ahí se vierte el yeso y se enrasa; unas tablas sueltas cierran sus extremos y lados."],
    },
    clearance: {
      name: "holgura", forms: ["holgura"],
      says: ["El espacio que se deja entre piezas que encajan una en otra. En impresoras corrientes, de 0,2 a 0,3 mm por lado desliza; menos, se atasca."],
    },
    consistency: {
      name: "relación agua/yeso", forms: ["relación agua/yeso"],
      says: ["Partes de agua por 100 partes de yeso, en peso. Más agua da un yeso que absorbe más y es más débil.", "Mezcle igual todas las partes de un molde, o la pared de la pieza diferirá de una parte a otra."],
    },
    slip: {
      name: "barbotina", forms: ["barbotina"],
      says: ["Arcilla en agua, lo bastante fluida para verterla. El yeso le quita agua, y la arcilla crece sobre la cara del molde."],
    },
    cast: {
      name: "pieza colada", forms: ["pieza colada", "piezas coladas", "colada", "coladas"],
      says: ["La arcilla que queda en el molde cuando se ha vertido fuera la barbotina sobrante: la vasija antes de secar y cocer. La colada es también el acto de hacerla."],
    },
    wall: {
      name: "pared", forms: ["pared"],
      says: ["El grosor de la arcilla, medido en húmedo. Crece con la raíz cuadrada del tiempo en el molde: el doble de gruesa tarda cuatro veces más."],
    },
    bands: {
      name: "cintas", forms: ["cintas", "cinta"],
      says: ["Lo que mantiene cerrado un molde de varias partes mientras tiene barbotina, pues esta empuja las partes y las separa. Póngalas antes de llenar."],
    },
    flotation: {
      name: "flotación", forms: ["flotación"],
      says: ["El yeso fresco levanta un positivo hueco como el agua levanta un barco. Sujételo a su placa o cárguelo con un peso antes de verter."],
    },
    shrinkage: {
      name: "contracción", forms: ["contracción"],
      says: ["La arcilla mengua al secarse y otra vez al cocerse. El secado se cuenta sobre la longitud húmeda y la cocción sobre la seca, así que los dos porcentajes no se pueden sumar sin más."],
    },
    oversize: {
      name: "sobremedida", forms: ["sobremedida"],
      says: ["Cuánto más grande es el molde que la vasija cocida, para que esta salga a su medida. Una arcilla que se contrae un 12 % necesita 113,6 %, no 112 %."],
    },
    testBar: {
      name: "barra de prueba", forms: ["barra de prueba", "barras de prueba", "barra", "barras"],
      says: ["Una barra de la propia arcilla con una longitud marcada en ella, medida húmeda, seca y cocida. Dice con qué contracción hay que contar."],
    },
    foot: { name: "pie", forms: ["pie"], says: ["Aquello sobre lo que se apoya la vasija. Toda altura se mide hacia arriba desde su lugar más bajo."] },
    section: {
      name: "alzado y sección", forms: ["alzado", "sección"],
      says: ["A la izquierda del eje, la vasija vista de lado; a la derecha, la vasija y su molde como cortados por la mitad."],
    },
    node: {
      name: "nodo", forms: ["nodo", "nodos"],
      says: ["Un punto por el que pasa el perfil. Una esquina es viva, un nodo suave es redondo; entre dos esquinas la pared es recta."],
    },
  },
};

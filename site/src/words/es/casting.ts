// Spanish words of the Casting panel.

const nth = ["Primera", "Segunda", "Tercera", "Cuarta", "Quinta", "Sexta", "Séptima", "Octava"];

export const casting = {
  // figures
  how: "cómo", howOf: (label: string) => `De dónde sale: ${label}`, figureSource: "Fuente",
  more: (n: number) => (n === 1 ? "Una cifra más" : `${n} cifras más`),
  caution: "Precaución", cautionsHere: "Precauciones",
  defaultIs: (v: string) => `si no se mide: ${v}`,
  noneSet: "ninguno",

  // settings
  part: "Parte", plaster: "Yeso", water: "Agua",
  consistency: "Relación agua/yeso", consistencyHint: "partes de agua por 100 de yeso, en peso",
  wall: "Pared de la pieza, húmeda", slipDensity: "La barbotina pesa", solidsDensity: "La arcilla pesa, seca y maciza",

  // panel
  glance: "En breve",
  glanceNames: {
    mixPlaster: "Yeso", mixWater: "Agua", minutes: "Tiempo en el molde", slipFill: "Barbotina para llenar", castsPerDay: "Coladas al día", liftFull: "Molde lleno",
  },
  mix: "Yeso, en el orden de mezcla",
  mixHint: "Una mezcla por línea. Primero el agua, luego espolvorear en ella el yeso. El desperdicio está contado.",
  bucketsOf: "Cubos", inEach: "por cubo",
  total: "Juntos",
  castTitle: "La barbotina y su tiempo en el molde",
  wallsTitle: "La pared según el tiempo", wallsFaces: "La pared en cada una de las dos caras según el tiempo", wanted: "deseada",
  afterMinutes: "Qué pared tras",
  laterTitle: "Coladas de un día",
  laterLine: (i: number, m: string) => `${nth[i] ?? `N.º ${i + 1}`} colada ${m}`,
  laterNone: "Una colada moja este molde demasiado para otra el mismo día.",
  slipIn: "Pesada como", slipUnits: { ml: "g por ml", litre: "g por litro", pint: "oz por pinta imperial" },
  trialsTitle: "Sus coladas de prueba",
  trialsHint: "Corte una prueba de través y mida su pared en húmedo. Con varias, la constante se ajusta a todas y se da su dispersión.",
  trial: (i: number) => `Prueba ${i}`, trialWall: "Pared, mm", trialMinutes: "Tiempo, min",
  addTrial: "Añadir una prueba", removeTrial: (i: number) => `Quitar la prueba ${i}`,
  trialAdded: "prueba añadida", trialRemoved: "prueba quitada",
  potTitle: "La pieza colada y la vasija",
  forceTitle: "Cintas y levantamiento",
  shrinkTitle: "Contracción, de barras de prueba",
  barsHint: "Marque una longitud en una barra y mídala húmeda, seca y cocida, en una misma unidad. ASTM C326 pide diez barras; una es mejor que ninguna.",
  bar: (i: number) => `Barra ${i}`, barLength: (i: number, when: string) => `Barra ${i}, ${when}`, barNames: { wet: "Húmeda", dry: "Seca", fired: "Cocida" },
  addBar: "Añadir una barra", removeBar: (i: number) => `Quitar la barra ${i}`,
  barsResult: (d: string, f: string, t: string) => `Secado ${d}, cocción ${f}, total ${t}.`,
  barsSpread: (s: string, n: number) => `Los totales de ${n} barras se dispersan ${s}.`,
  barsUse: "Usar estos porcentajes", barsUsed: "contracción de barras de prueba", barsSaid: "Se usa la contracción de las barras de prueba.",
  barsInUse: "Estos son los porcentajes en uso.",
  ownTitle: "Sus propias medidas",
  ownHint: "Todo funciona con lo que hay aquí. Ponga su propia cifra cuando la haya medido.",
  ownGroups: {
    clay: "Arcilla y pieza colada", mix: "Mezcla del yeso", data: "De la ficha técnica del fabricante del yeso", water: "Agua y secado",
    pot: "La vasija en uso", bands: "Cintas", lift: "El levantamiento",
  },
  own: {
    castMoisture: ["Agua en la pieza recién colada", "% de masa húmeda"], lossOnIgnition: ["Pérdida en la cocción", "% de masa seca"],
    waste: ["Yeso para desperdicio", "%"], bucket: ["El cubo tiene", "ml"], bucketFill: ["Lleno como mucho", "%"],
    publishedWetDensity: ["Densidad de la mezcla", "g/ml"], absorption: ["El yeso seco absorbe", "% de masa seca"],
    settingExpansion: ["Se expande al fraguar", "%"],
    halfRateWater: ["Absorbe la mitad de rápido con", "% de masa seca"], dryingRate: ["Se seca a", "g/cm² min"],
    laterCastSlowdown: ["Cada colada posterior tarda", "% más"],
    glaze: ["Grosor del vidriado cocido", "mm"], glazeDensity: ["El vidriado cocido pesa", "g/ml"], fillLine: ["Línea de llenado bajo el borde", "mm"],
    bandTension: ["Una cinta tira con", "N"], bandSafety: ["Seguridad de las cintas", "veces"],
    reach: ["De las manos a los tobillos", "cm"], hands: ["De las manos al suelo", "cm"], travel: ["Altura del levantamiento", "cm"], twist: ["Giro del cuerpo", "°"],
  } as const,
};

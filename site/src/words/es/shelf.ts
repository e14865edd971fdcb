// Spanish words of the sample shelf.

export const shelf = {
  shelf: "El estante de muestras",
  shelfHint: "Vasijas de un taller que no existe, una por cada manera de partir un molde. La suya llega al banco de la misma manera.",
  shelfAll: "Lo que muestra cada una", shelfAway: "Recoger el estante",
  shelfOpen: "Muestras",
  /** What each is called, and what it shows. */
  samples: {
    "Harbour jar": ["Tarro Puerto", "Dos partes, partido por la panza."],
    "Reed beaker": ["Vaso Junco", "Una parte: se abre todo el camino hasta el borde."],
    "Quay dish": ["Fuente Muelle", "Colada maciza: un macho forma el interior, se llena por el pie."],
    "Skep pot": ["Vasija Colmena", "Una forma cerrada: dos partes y un orificio para llenarla."],
    "Reed-cut cup": ["Taza Estría", "Estrías que aún se desmoldan en una parte."],
    "Slate lid": ["Tapa Pizarra", "Se abre hacia abajo, así que se cuela boca abajo, en una parte."],
    "Sand amphora": ["Ánfora Arena", "Dos partes laterales y nada más: no tiene pie."],
    "Heron vase": ["Jarrón Garza", "Una cintura: dos partes laterales y una inferior."],
    "Skiff vase": ["Jarrón Esquife", "De corte ovalado: dos partes laterales y una inferior."],
    "Cone buoy": ["Boya Cono", "Plana por arriba: dos partes laterales y una superior."],
    "Trivet vase": ["Jarrón Trébede", "De tres caras: tres partes laterales y una inferior."],
    "Hail beaker": ["Vaso Granizo", "Los hoyuelos de la pared piden una tercera parte lateral."],
    "Reel bottle": ["Botella Carrete", "Plana por los dos extremos: dos partes laterales, una inferior y una superior."],
    "Dovetail dish": ["Plato Milano", "Un pie que ningún tiro libera: vea la trampa y cambie la forma."],
  } as const,
  putOn: (name: string, line: string) => `${name}: ${line}`,
};

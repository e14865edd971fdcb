// Spanish words of the Form panel.

export const form = {
  size: "Las longitudes son las de la", fired: "vasija cocida", wet: "pieza húmeda (tamaño del molde)", sizeStep: "tamaño de las longitudes cambiado",
  sizeLine: (h: string, d: string) => `${h} de alto, ${d} de ancho`,
  sizeFired: "Cocida", sizeWet: "Húmeda, como en el molde",
  capacity: "Capacidad, cocida, hasta el borde",
  nodesEarlier: "Nodos anteriores", nodesLater: "Nodos siguientes", nodesShown: (a: string, b: string, n: string) => `Nodos ${a} a ${b} de ${n}`,
  nodes: "Coordenadas", radius: "Radio, mm", height: "Altura, mm", kind: "El nodo es",
  nodesHint: "Desde el eje bajo el pie, hacia fuera, hacia arriba y hasta el borde; de vuelta al eje para una forma cerrada.",
  rowsTitle: "Escribir o pegar filas",
  rowsHint: "Un nodo por fila, dos números: distancia al eje y luego altura. Entre ellos, tabuladores, comas, punto y coma o espacios; 12,5 y 12.5 son lo mismo.",
  rowsUnits: "Las filas están en", rowsAsk: "elegir", rowsAcross: "El primer número es el",
  acrossRadius: "radio", acrossDiameter: "diámetro",
  rowsUse: "Usar estas filas", rowsStep: "filas escritas",
  rowsNeedUnit: "Elija la unidad de las filas: mm, cm o in.",
  atLine: (n: number) => `Línea ${n}`,
  shrinkage: "Contracción de la pasta", drying: "Secado", firing: "Cocción", atRelease: "Al salir del molde",
  shrinkageHint: "Porcentaje de longitud. El secado se mide sobre la longitud húmeda; la cocción, sobre la seca.",
  enlarged: (f: string) => `El molde se hace ${f} veces el tamaño cocido.`,
};

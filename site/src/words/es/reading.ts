// Spanish words of the tables that tell what a drawing shows.

export const reading = {
  view: "Tabla", ask: "Leer como tabla", title: "Lo que muestra el dibujo, en tablas",
  parts: "Partes del molde", part: "Parte", pull: "Tiro", from: "De, mm", to: "A, mm", verdict: "Veredicto", where: "Ahora",
  closed: "en su sitio", moved: (share: string) => `${share} de su camino`, off: "fuera", held: (d: string) => `${d} retenidos`,
  places: "Lugares", place: "Lugar", height: "Altura sobre el pie, mm", measure: "Medida",
  seam: "costura", trimLine: "línea de corte", natch: "llave", atAxis: (r: string, deg: string) => `a ${r} del eje, a ${deg} en torno a él`,
  catches: (part: string) => `enganche, ${part}`, deep: (d: string) => `${d} de profundidad`, trap: "trampa", air: "aire retenido", slip: "barbotina retenida", ghost: "mayor cambio hasta la forma más próxima",
  wall: "Pared, a tamaño de molde", wallHeight: "Altura, mm", radius: "Radio, mm", draft: (pull: string) => `Ángulo de salida, tiro ${pull}`, offLine: "Fuera de la línea, mm",
  none: "No hay nada marcado.",
  figure: "Contorno de la figura", point: "lugar preguntado",
};

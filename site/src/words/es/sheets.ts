// Spanish words of the Sheets panel.

export const sheets = {
  paper: "Papel", getPdf: "Descargar PDF", getSvg: "Descargar SVG",
  pages: (n: number) => `${n} página${n === 1 ? "" : "s"}`,
  making: "Dibujando la hoja…",

  sheets: {
    profile: ["Perfil, tamaño real", "Ponga encima la vasija, una costilla o el positivo."],
    template: ["Plantilla, tamaño real", "Córtela en cartón y apóyela contra la arcilla o el yeso."],
    section: ["Sección del molde cerrado", "Partes, costuras, tiros y medidas, a escala."],
    report: ["Informe del despiece", "El veredicto, por qué no menos, cifras y sus fuentes."],
    workshop: ["Ficha de taller", "Una página para colgar: mezclas, tiempos, orden, cintas."],
  } as const,
  whichSheet: "Hoja", lines: "Línea", linesFired: "tamaño cocido", linesWet: "tamaño húmedo, como en el molde", linesBoth: "ambas",
  shape: "Figura", half: "medio perfil", full: "silueta entera",
  summaryOnly: "Solo la primera página",
  beforePrint: "Imprima al 100 %, «tamaño real», nunca «ajustar a la página». Luego ponga una regla sobre las barras.",
  scaleTitle: "¿Las barras no miden 100 mm?",
  scaleHint: "Escriba lo que dice su regla. La hoja se dibuja otro tanto más grande o más pequeña, para que la próxima impresión sea exacta; mantenga los mismos ajustes de la impresora.",
  barAcross: "Barra a lo ancho de la página", barUp: "Barra a lo alto de la página",
  scaleOn: (x: string, y: string) => `Dibujado para una impresora que hace de 100 mm ${x} a lo ancho y ${y} a lo alto.`,
  scaleOff: "Volver a 100 mm", scaleBad: "Esa no es una barra de 100 mm. Mida otra vez de extremo a extremo; se puede corregir de 90 a 110 mm.",
  pageOf: (i: number, n: number) => `Página ${i} de ${n}`,
  svgOf: (i: number) => `SVG de la página ${i}`,
  zoomed: "Abrirla más grande", pageAlt: (sheet: string, i: number, n: number) => `${sheet}, Página ${i} de ${n}. Abrirla más grande.`,
};

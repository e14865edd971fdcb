// Spanish words about keeping work: versions, the saved-or-not mark, damaged
// files, and what is under way.

import type { From } from "../from";
import { page } from "./page";

export const keep = {
  versions: "Copias", versionsTitle: "Copias guardadas en este navegador",
  versionsHint: "La página conserva las últimas copias de cada vasija, más seguidas cuanto más nuevas. El navegador puede borrarlas; un archivo guardado permanece.",
  none: "Aún no se ha conservado nada. El primer cambio de una vasija empieza su fila.",
  refused: "Este navegador no conserva nada entre visitas. Guarde el trabajo en un archivo.",
  onBench: "En el banco", nameless: "Una vasija sin nombre",
  take: "Recuperar", takeOf: (name: string, when: string) => `Recuperar ${name}, ${when}`,
  toFile: "guardada en un archivo", otherTab: "de otra pestaña o visita", noVerdict: "aún sin plan", isHere: "tal como está en el banco",
  keptHere: "No guardado en archivo; conservado en este navegador", keptNowhere: "No guardado en ningún sitio",
  full: "Este navegador no tiene más sitio para conservar el trabajo, o se niega. Guárdelo en un archivo.",
  unread: (name: string, why: string) => `El trabajo de su última visita (${name}) no se puede leer: ${why} Queda entre las copias; lo conservado antes está en el banco.`,
  strange: {
    empty: (from: From) => `${page.large(from)}: está vacío. La vasija del banco no ha cambiado.`,
    page: (from: From) => `${page.large(from)}: es una página web, no un trabajo. Abra esa página, pulse ahí Guardar y abra el archivo que da.`,
    zip: (from: From) => `${page.large(from)}: es una carpeta comprimida. Descomprímala primero y abra lo que contiene.`,
    pdf: (from: From) => `${page.large(from)}: es un PDF. Una hoja no se puede volver a convertir en un trabajo; abra el trabajo guardado, o una imagen de la vasija.`,
    mesh: (from: From) => `${page.large(from)}: es una malla. Una forma viene de un trabajo guardado, de filas de radios y alturas, de un dibujo (SVG) o de una imagen.`,
    words: (from: From) => `${page.large(from)}: tiene palabras, pero no números. Una forma sale de un trabajo guardado, de filas de radios y alturas, de un dibujo (SVG) o de una imagen.`,
    binary: (from: From) => `${page.large(from)}: no tiene texto que se pueda leer. Puede estar dañado, o ser de otro programa. La vasija del banco no ha cambiado.`,
  },
  damagedTitle: (from: From) => `${page.large(from)}: dañado`,
  damagedRows: (n: number) => `Se pueden leer ${n} filas de su contorno.`,
  damagedSure: "Mire el contorno antes de fiarse: no se puede saber qué falta.",
  damagedLost: "Lo que se perdió o se corrigió",
  damagedTake: "Ponerlo en el banco", damagedLeave: "Dejarlo",
  damagedStep: (from: From) => `Abierto lo que se pudo leer: ${page.source(from)}`,
};

// Worte der Zeichnung und dessen, was man auf ihr tun kann.

import type { drawing as en } from "../en/drawing";
import type { Like } from "../like";

export const drawing: Like<typeof en> = {
  drawing: "Zeichnung des Gefäßes und seiner Form: links die Ansicht, rechts der Schnitt",
  axisUnit: "mm in der Form",
  drawingHint: "Einen Knoten ziehen, oder ihn wählen und − oder + in der Leiste darunter drücken, oder die Pfeiltasten: 0,1 mm, mit Umschalt 1 mm, mit Alt 0,01 mm. Eingabe macht eine Ecke rund und zurück, Einfg fügt einen Knoten ein, Entf entfernt einen. Plus und Minus zoomen, 0 zeigt das Ganze.",
  nodeLabel: (i, n, r, z, kind) => `Knoten ${i} von ${n}, Radius ${r}, Höhe ${z}, ${kind}`,
  node: (i) => `Knoten ${i}`,
  noNode: "Auf der Zeichnung oder in der Tabelle einen Knoten wählen, um ihn zu verschieben.",
  corner: "Ecke", smooth: "rund", nodeTurn: (i, corner) => (corner ? `Knoten ${i}: Ecke, rund machen` : `Knoten ${i}: rund, zur Ecke machen`),
  nodeRadius: (i) => `Knoten ${i}, Radius, mm`, nodeHeight: (i) => `Knoten ${i}, Höhe, mm`,
  addAfter: "Einfügen", remove: "Entfernen", addAfterNode: (i) => `Nach ${i} einfügen`, removeNode: (i) => `${i} entfernen`,
  nudgeIn: "1 mm nach innen", nudgeOut: "1 mm nach außen", nudgeDown: "1 mm tiefer", nudgeUp: "1 mm höher",
  moved: (i) => `Knoten ${i} verschoben`, added: (i) => `Knoten nach ${i} eingefügt`,
  removed: (i) => `Knoten ${i} entfernt`, turned: (i) => `Knoten ${i}: Ecke oder rund`,
  thickest: (d) => `Dickste Wand: ${d}, dort wird der Ton zuletzt fest.`, thickestPlace: "dickste Wand",
  elevation: "Ansicht", section: "Schnitt", trimLine: "Schnittlinie",
  seam: (z) => `Naht ${z}`,
  catchMark: (d) => `hakt ${d}`, trapMark: (d) => `Falle ${d}`,

  // Bearbeiten
  zoom: "Zoom", zoomIn: "Näher", zoomOut: "Weiter weg", zoomWhole: "Ganz",
  panLeft: "Zeigen, was links ist", panRight: "Zeigen, was rechts ist", panUp: "Zeigen, was oben ist", panDown: "Zeigen, was unten ist",
  firstNode: "Knoten 1 wählen", nodeBefore: "Voriger Knoten", nodeAfter: "Nächster Knoten",
  toward: (k) => `zu Knoten ${k}`, straight: "gerade", upright: "senkrecht", level: "waagerecht", snap: "Fangen",
  straightened: (i, k) => `Strecke von Knoten ${i} bis ${k} begradigt`,
  linedUp: (i, k, how) => `Knoten ${i} ${how === "upright" ? "senkrecht über" : "auf gleiche Höhe mit"} Knoten ${k} gesetzt`,
  behind: "Bild hinter dem Profil", behindShow: "Das Bild zeigen", behindHow: "Wie kräftig",
};

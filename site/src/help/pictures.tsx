// The picture of each word, in the same few shapes: a jar parted at its belly, a
// beaker of one part, a wall seen from near by. What the word means stands out;
// the words of the card say the same, so that the picture may go unseen.
import type { JSX } from "preact";
import { Axis, AXIS, Body, both, half, On, Plaster, Pull } from "./sketch";
import type { TermId } from "./terms";

const jar = "M0 98L18 98C30 88 40 72 40 58C40 44 31 30 24 20";
const jarUnder = "M0 108L62 108L62 58L40 58C40 72 30 88 18 98L0 98";
const jarOver = "M40 58L62 58L62 6L22 6L24 20C31 30 40 44 40 58";
const beaker = "M0 96L20 96L34 18";
const beakerUnder = "M0 108L58 108L58 18L34 18L20 96L0 96";
const wallOf = (d: string, inner: string) => `${d}${inner}Z`;
const jarClay = wallOf(jar, "L20 20C27 30 36 44 36 58C36 72 27 86 16 94L0 94");
const beakerClay = wallOf(beaker, "L29 18L16 91L0 91");
/** A body on its plate, as it is printed. */
const dome = "M0 34L16 34C26 44 34 60 34 88";
const plate = "M0 88L58 88L58 98L0 98";

const closed = (id: string, stands: "lower" | "upper" | null = null) => (
  <>
    <Plaster id={id} part="lower" d={jarUnder} pale={stands === "upper"} />
    <Plaster id={id} part="upper" d={jarOver} pale={stands === "lower"} />
  </>
);

const Clay = ({ d }: { d: string }) => <><path class="clay" d={both(d)} /></>;

/** The round seen from above: sectors A and B about the pot. */
const fromAbove = (id: string, gap = 0) => (
  <>
    <Plaster id={id} part="A" side={1} by={[gap, 0]} d="M0 6C28 6 50 28 50 56C50 84 28 106 0 106L0 82C14 82 26 70 26 56C26 42 14 30 0 30Z" />
    <Plaster id={id} part="B" side={-1} by={[-gap, 0]} d="M0 6C28 6 50 28 50 56C50 84 28 106 0 106L0 82C14 82 26 70 26 56C26 42 14 30 0 30Z" />
    <circle class="body" cx={AXIS} cy={56} r={26} /><circle class="outline" cx={AXIS} cy={56} r={26} />
  </>
);

export const pictures: Record<TermId, (id: string) => JSX.Element> = {
  pull: (id) => (
    <g transform="translate(0 24) scale(1 0.58)">
      <Plaster id={id} part="lower" d={jarUnder} by={[0, 14]} /><Plaster id={id} part="upper" d={jarOver} by={[0, -14]} />
      <Body d={jar} />
      <g transform="scale(1 1.72)"><Pull x={24} y={44} turn={90} part="lower" /><Pull x={24} y={24} turn={-90} part="upper" /></g>
    </g>
  ),
  draft: (id) => (
    <>
      <Plaster id={id} part="lower" side={1} d="M-40 104L64 104L64 10L2 10L-40 104" />
      <path class="outline" d="M44 104L86 10" />
      <path class="reference" d="M44 104V10" />
      <On d="M44 34A70 70 0 0 1 72.6 40" />
      <Pull x={128} y={60} turn={90} part="lower" />
    </>
  ),
  catch: (id) => (
    <>
      <Plaster id={id} part="lower" d="M36 104L66 104L66 12L24 12C14 40 14 62 20 74L36 88" />
      <Body d="M0 104L36 104L36 88L20 74C14 62 14 40 24 12L0 12" />
      <path class="caught" d={both("M20 74L36 88")} />
      <path class="held-by" d={both("M20 74L36 74")} />
      <path class="held-by" d={both("M36 88L36 40")} />
      <Pull x={140} y={66} turn={90} part="lower" by={0.6} />
    </>
  ),
  rub: (id) => (
    <>
      <Plaster id={id} part="lower" d="M30 104L64 104L64 10L30 10L30 104" />
      <Body d="M0 96L30 96L30 10L0 10" />
      <path class="rubbed" d={both("M30 92L34 86L30 80L34 74L30 68L34 62L30 56L34 50L30 44L34 38L30 32L34 26L30 20")} />
      <Pull x={134} y={50} turn={90} part="lower" />
    </>
  ),
  trap: (id) => (
    <>
      <Plaster id={id} part="lower" d="M0 108L64 108L64 24L48 24L36 96L22 96L22 80L0 80" />
      <path class="trap" d={both("M12 80L30 62L0 62L0 80Z")} />
      <Body d="M0 62L30 62L12 80L22 80L22 96L36 96L48 24L0 24" />
      <path class="trap" d={both("M0 62L30 62L12 80L0 80Z")} />
    </>
  ),
  letGo: (id) => (
    <>
      <Plaster id={id} part="lower" d={beakerUnder} />
      <path class="gone" d={both("M0 96L20 96L34 18L0 18Z")} />
      <Clay d="M0 94L15 94L28 24L23 24L11 89L0 89Z" />
      <path class="outline" d={both("M0 94L15 94L28 24")} />
      <On d="M116 46h-9m4 -4l-4 4 4 4M52 46h9m-4 -4l4 4 -4 4" />
    </>
  ),
  ripple: (id) => (
    <>
      <Plaster id={id} part="lower" side={1} d="M-8 104L64 104L64 8L-2 8C6 12 6 20 -2 24C6 28 5 36 -3 40C5 44 4 52 -4 56C4 60 3 68 -5 72C3 76 2 84 -6 88C2 92 2 100 -8 104" />
      <path class="body" d="M30 104H76C86 100 86 92 78 88C86 84 87 76 79 72C87 68 88 60 80 56C88 52 89 44 81 40C89 36 90 28 82 24C90 20 90 12 82 8H30Z" />
      <path class="outline" d="M76 104C86 100 86 92 78 88C86 84 87 76 79 72C87 68 88 60 80 56C88 52 89 44 81 40C89 36 90 28 82 24C90 20 90 12 82 8" />
      <path class="caught" d="M79 72C87 68 88 60 80 56" />
      <Pull x={126} y={46} turn={90} part="lower" />
    </>
  ),
  ghost: () => (
    <>
      <Body d={jar} /><Axis />
      <path class="ghost" d={both("M18 98C30 88 40 72 40 58L43 20")} />
    </>
  ),
  pocket: () => (
    <>
      <path class="slip" d={both("M0 98L16 98L46 66L46 40L14 40L14 30L0 30Z")} />
      <path class="held-air" d={both("M14 24L46 32L46 40L14 40Z")} />
      <path class="outline" d={both("M0 98L16 98L46 66L46 32L14 24L14 8")} />
      <On d={both("M14 24L46 32L46 40L14 40Z")} />
    </>
  ),
  partingLine: () => <><Body d={jar} /><path class="outline" d="M60 20H108" /><Axis /><On d="M44 58H124" /></>,
  seam: (id) => (
    <>
      {closed(id)}<Body d={jar} line={false} />
      <path class="outline" d={both(jar)} />
      <On d={both("M40 58L62 58")} />
      <path class="ridge" d={both("M40 54L45 58L40 62Z")} />
    </>
  ),
  lower: (id) => <>{closed(id, "lower")}<Body d={jar} /><Pull x={134} y={80} turn={90} part="lower" by={0.6} /></>,
  upper: (id) => <>{closed(id, "upper")}<Body d={jar} /><Pull x={134} y={34} turn={-90} part="upper" by={0.6} /></>,
  side: (id) => (
    <g transform="translate(16.8 11.2) scale(0.8)">
      {fromAbove(id, 10)}<Pull x={150} y={56} turn={0} part="A" by={0.8} /><Pull x={18} y={56} turn={180} part="B" by={0.8} />
    </g>
  ),
  core: (id) => (
    <>
      <Plaster id={id} part="lower" d="M0 108L62 108L62 40L46 40L28 92L0 92" />
      <Clay d="M0 92L28 92L46 40L38 40L22 84L0 84Z" />
      <Plaster id={id} part="upper" by={[0, -4]} d="M0 84L22 84L38 40L60 40L60 28L0 28" />
      <Pull x={AXIS} y={26} turn={-90} part="upper" by={0.7} />
    </>
  ),
  block: (id) => <>{closed(id)}<Body d={jar} /><On d={both("M0 108L62 108L62 6L22 6")} /></>,
  natch: (id) => (
    <>
      <Plaster id={id} part="upper" side={1} by={[0, -8]} d="M-56 56L-16 56C-12 44 12 44 16 56L56 56L56 22L-56 22L-56 56" />
      <Plaster id={id} part="lower" side={1} by={[0, 8]} d="M-56 56L-14 56C-11 46 11 46 14 56L56 56L56 92L-56 92L-56 56" />
      <On d="M70 64C73 54 95 54 98 64" /><On d="M68 48C72 36 96 36 100 48" />
    </>
  ),
  spare: (id) => (
    <>
      <Plaster id={id} part="upper" d="M30 104L66 104L66 12L26 12L24 44C30 60 33 80 30 104" />
      <path class="slip" d={both("M0 104L30 104C33 80 30 60 24 44L25.5 22L0 22Z")} />
      <path class="reference" d={both("M0 44L24 44")} />
      <On d={both("M24 44L26 12L0 12")} />
    </>
  ),
  trimLine: (id) => (
    <>
      <Plaster id={id} part="upper" d="M30 104L66 104L66 12L26 12L24 44C30 60 33 80 30 104" />
      <Clay d="M24 104L30 104C33 80 30 60 24 44L25.5 20L20 20L18 44C24 60 27 80 24 104Z" />
      <On d={both("M0 44L34 44")} />
    </>
  ),
  fillHole: (id) => (
    <>
      <Plaster id={id} part="lower" d="M0 108L62 108L62 66L44 66C44 86 26 98 0 98" pale />
      <Plaster id={id} part="upper" d="M44 66L62 66L62 14L7 14L10 36C30 38 44 50 44 66" />
      <Body d="M0 98C26 98 44 86 44 66C44 50 30 38 10 36" line={false} />
      <path class="outline" d={both("M0 98C26 98 44 86 44 66C44 50 30 38 10 36")} />
      <On d={both("M10 36L7 14")} /><Pull x={AXIS} y={4} turn={90} by={0.6} />
    </>
  ),
  drainHole: (id) => (
    <>
      <Plaster id={id} part="lower" d="M7 108L62 108L62 14L36 14L24 84L6 84L7 108" />
      <path class="outline" d={both("M36 14L24 84L6 84")} />
      <On d={both("M6 84L7 108")} /><Pull x={AXIS} y={78} turn={90} by={0.8} />
    </>
  ),
  strap: (id) => (
    <>
      <Plaster id={id} part="A" side={1} d="M0 104L56 104L56 84L50 84L50 74L56 74L56 42L50 42L50 32L56 32L56 10L0 10" />
      <Plaster id={id} part="B" side={-1} d="M0 104L56 104L56 84L50 84L50 74L56 74L56 42L50 42L50 32L56 32L56 10L0 10" />
      <path class="edge" d="M84 10V104" />
      <path class="strap" d="M34 37H134M34 79H134" />
    </>
  ),
  positive: () => <><Body d={dome} /><path class="body" d={both(plate + "Z")} opacity={0.5} /><path class="edges" d={both(plate)} /><Axis from={20} /></>,
  plug: (id) => (
    <>
      <Plaster id={id} part="upper" d="M0 108L62 108L62 40L24 40C34 52 38 72 34 96L0 96" pale />
      <path class="body" d={both("M34 96C38 72 34 52 24 40L8 40L8 46L0 46L0 96Z")} opacity={0.5} />
      <path class="body" d={both("M24 30L34 4L0 4L0 36L8 36L8 30Z")} />
      <On d={both("M8 30L24 30L34 4L0 4")} /><Pull x={128} y={22} turn={-90} by={0.6} />
    </>
  ),
  plate: () => (
    <>
      <path class="body" d={both(dome + "L0 88Z")} opacity={0.5} /><path class="edges" d={both(dome)} />
      <path class="body" d={both(plate + "Z")} />
      <On d={both("M34 88L46 88L46 92L50 92L50 88L58 88L58 98L0 98")} />
    </>
  ),
  stave: () => (
    <>
      <path class="edges" d={both(dome + "L0 88") + both(plate)} />
      <path class="body" d={both("M46 92L50 92L50 18L46 18Z")} />
      <On d={both("M46 92L50 92L50 18L46 18Z")} />
    </>
  ),
  collar: () => (
    <>
      <path class="edges" d={both(dome + "L0 88") + both(plate) + both("M46 88L46 18L50 18L50 88")} />
      <path class="body" d={both("M50 22L58 22L58 32L50 32Z")} />
      <On d={both("M50 22L58 22L58 32L50 32Z")} />
    </>
  ),
  tray: (id) => (
    <>
      <Plaster id={id} part="A" side={1} d="M-50 30L50 30L50 84L34 84C30 52 -30 52 -34 84L-50 84L-50 30" />
      <path class="body" d="M28 30H34V84H50C54 52 114 52 118 84H134V30H140V92H28Z" />
      <On d="M34 30V84H50C54 52 114 52 118 84H134V30" />
      <Pull x={AXIS} y={4} turn={90} part="A" by={0.7} />
    </>
  ),
  clearance: () => (
    <>
      <path class="body" d="M22 30H60V84H108V30H146V102H22Z" /><path class="outline" d="M22 30H60V84H108V30H146V102H22Z" />
      <path class="plaster" d="M66 12H102V78H66Z" /><path class="outline" d="M66 12H102V78H66Z" />
      <On d="M48 56h11m-4 -4l4 4 -4 4M80 56h-13m4 -4l-4 4 4 4" />
    </>
  ),
  consistency: (id) => (
    <>
      <path class="slip" d="M33 100L30 47H70L67 100Z" /><path class="outline" d="M26 18L33 100H67L74 18" />
      <Plaster id={id} part="lower" side={1} d="M17 100L14 24L54 24L51 100L17 100" /><path class="outline" d="M94 18L101 100H135L142 18" />
      <path class="reference" d="M20 47H148" />
    </>
  ),
  slip: (id) => (
    <>
      <Plaster id={id} part="lower" d={beakerUnder} />
      <path class="slip" d={both("M0 96L20 96L34 18L0 18Z")} />
      <path class="outline" d={both("M0 96L20 96L34 18")} />
      <On d={both("M26 62L44 62M40 58L44 62L40 66M30 42L48 42M44 38L48 42L44 46")} />
    </>
  ),
  cast: (id) => <><Plaster id={id} part="lower" d={beakerUnder} pale /><Clay d={beakerClay} /><path class="outline" d={both("M0 91L16 91L29 18L34 18L20 96L0 96")} /></>,
  wall: () => (
    <>
      <path class="clay" d="M34 96C35 80 46 68 62 62C90 50 116 38 146 30V96Z" fill-opacity={0.35} />
      <path class="edges" d="M24 96H156M34 104V12" />
      <path class="outline" d="M34 96C35 80 46 68 62 62C90 50 116 38 146 30" />
      <path class="reference" d="M62 96V62H34M146 96V30H34" />
      <On d="M62 96V62M146 96V30" />
    </>
  ),
  bands: (id) => (
    <g transform="translate(8.4 5.6) scale(0.9)">
      {fromAbove(id)}<circle class="strap" cx={AXIS} cy={56} r={53} fill="none" />
      <Pull x={AXIS + 4} y={56} turn={0} by={0.6} /><Pull x={AXIS - 4} y={56} turn={180} by={0.6} />
    </g>
  ),
  flotation: (id) => (
    <>
      <Plaster id={id} part="lower" side={1} d="M-54 98L54 98L54 26L-54 26L-54 98" />
      <path class="edge" fill="none" d="M26 10V102H142V10" />
      <path class="hollow" d="M54 84L62 40H106L114 84Z" /><path class="outline" d="M54 84L62 40H106L114 84Z" />
      <Pull x={AXIS} y={76} turn={-90} by={0.9} />
    </>
  ),
  shrinkage: () => (
    <>
      <path class="clay" d="M20 16H148V36H20ZM20 48H140V68H20ZM20 80H130V100H20Z" fill-opacity={0.55} />
      <path class="outline" d="M20 16H148V36H20ZM20 48H140V68H20ZM20 80H130V100H20Z" />
      <path class="reference" d="M148 36V106M140 68V106" />
      <On d="M146 58h-5m2 -2l-2 2 2 2M138 90h-7m2.500 -2.500l-2.500 2.500 2.500 2.500" />
    </>
  ),
  oversize: () => <><path class="on" d={both("M0 102L20 102C33 91 45 73 45 57C45 41 34 24 27 12L0 12")} /><g transform="translate(11.8 13.200) scale(0.86)"><Body d={jar} /></g></>,
  testBar: () => (
    <>
      <path class="clay" d="M16 44H152V72H16Z" fill-opacity={0.55} /><path class="outline" d="M16 44H152V72H16Z" />
      <On d="M34 38V78M134 38V78M34 90H134M40 86L34 90L40 94M128 86L134 90L128 94" />
    </>
  ),
  foot: () => <><Body d={jar} /><path class="outline" d="M60 20H108" /><path class="reference" d="M10 98H158" /><On d="M64 98H104" /><path class="edges" d="M144 98V20M140 92L144 98 148 92M140 26L144 20 148 26" /></>,
  section: (id) => (
    <>
      <Plaster id={id} part="lower" side={1} d={jarUnder} /><Plaster id={id} part="upper" side={1} d={jarOver} />
      <path class="body" d={half(jar + "L0 20Z", -1)} /><path class="outline" d={half(jar, -1) + "M84 20H60"} />
      <path class="clay" d={half(jarClay, 1)} /><path class="outline" d={half(jar, 1)} /><Axis />
    </>
  ),
  node: () => (
    <>
      <path class="outline" d="M24 96H84C112 84 128 66 128 48C128 34 118 24 108 16" />
      {([[24, 96], [84, 96], [108, 16]] as const).map(([x, y]) => <rect key={x} class="dot" x={x - 5} y={y - 5} width={10} height={10} />)}
      {([[128, 48]] as const).map(([x, y]) => <circle key={x} class="dot" cx={x} cy={y} r={5.5} />)}
    </>
  ),
};

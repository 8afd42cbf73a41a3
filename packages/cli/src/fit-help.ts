/** What `--help` shows for the commands of stick and fit. Examples come from the chart cabinet for the harbour office. */

const COMMON = `  --json               numbers for a program, named with their units and not rounded
  --picture FILE.svg   also draw it; an existing file is kept unless --force is given
  --force              replace files that stand there already
  --unit in|mm         what is read and written in; mm unless a job says otherwise
  --help               this page`;

const CORNER = `  --corner 90          between the two walls, 30 to 175; outside corners through the solid
  --triangle A,B,C     instead: along one wall, along the other, across from mark to mark
  --sides 8            instead: a corner of a regular polygon, outside unless --kind inside
  --kind outside       inside unless said`;

const TIMBERS = `  --timbers FILE.json  your own timbers:
                       { "format": "mouldwright/timbers", "version": 1, "timbers": [
                         { "name": "Plum, own tree", "source": "measured 2024",
                           "shrinkage": { "radialPercent": 5, "tangentialPercent": 9 } } ] }`;

export const FIT_OVERVIEW = `
  mouldwright stick    what to buy for a section, its bevels, how it is held, which way it is pushed
  mouldwright mitre    saw settings of a sprung moulding, and how each piece lies on the saw
  mouldwright hopper   a box with sloping sides: the same for n like sides
  mouldwright unlike   two unlike mouldings at a corner: where their mitre runs, straight or bent
  mouldwright frame    rails of a frame: lengths at both edges, mitres, rebate and glass
  mouldwright cornice  pieces of a run round a room or a case, with their joints
  mouldwright rake     sections of a raking moulding and its upper return, and their cuts
  mouldwright hip      hip or valley between two slopes: rise, backing, side cuts
  mouldwright light    how light, shade and shadow will fall on a moulding where it hangs
  mouldwright lengths  pieces marked along real sticks: fewest sticks, neighbours together
  mouldwright movement how much wood shrinks or swells from one moisture to another
  mouldwright side     a moulding along a solid side: where it is fast, where and how far it slides
  mouldwright timber   what is known of a timber, with its source
  mouldwright moisture what moisture wood comes to in air of a temperature and humidity`;

export const FIT_HELP = {
  stick: `mouldwright stick SECTION.svg|SECTION.dxf|JOB.json --length 1200

  --length 1200        of the finished moulding, ends trimmed
  --way flat|bevelled|canted
                       how it is worked; flat unless said
  --cant 15            for canted: turned by so many degrees; the best cant unless said
  --count 2            mouldings alike
  --timber 90x22       planed timber at hand: a larger section is built up of several sticks
  --parts DIR          write each part into this folder, as a drawing that plan reads
  --sawn 6x4           bought over the planed width x thickness; 6 x 4 mm unless said
  --ends 50,25         at each end, for planing on and off and for checks; 50 and 25 mm unless said
  --rises 2 --drifts=-1
                       your stick's grain, degrees: rising with the push, drifting to the far edge
  --plan PLAN.json     a plan of this section: fence and hands from what is really cut
  --stick 42x18 --at 0,0
                       the stick and the section's place in it, as for plan
${COMMON}

Examples, for the chart cabinet:
  mouldwright stick cornice.json --length 1355 --way bevelled --picture cornice-stick.svg
  mouldwright stick cornice.json --length 1355 --timber 50x18 --parts built-up
`,
  mitre: `mouldwright mitre --spring 38 --corner 90

Mitre and bevel for both pieces at a corner, laid flat and held at the spring.

  --spring 38          angle between the flat back and the wall, 0 to 90
  --from wall|ceiling  from where the spring is measured; the wall unless said
  --legs 40x52         instead: along the ceiling x down the wall, to the edges of the flat back
${CORNER}
  --leans right        which way your saw's blade leans; left unless said
  --width 60           width of the flat back
${COMMON}

Examples, for the chart cabinet's cornice:
  mouldwright mitre --spring 38 --corner 90 --kind outside --picture cornice-mitre.svg
  mouldwright mitre --spring 52 --from ceiling --triangle 600,800,1004
`,
  hopper: `mouldwright hopper --sides 4 --slope 70

A box or a tray with like sides that slope: each side laid flat on its inside.

  --sides 4            how many, 3 to 72
  --slope 70           of the sides, 0 to 90
  --from level|plumb   from where the slope is measured; level unless said
  --width 120          of a side, from edge to edge along its slope
  --length 200         of a side along its narrow edge, outside: the wide edge follows
  --leans right        which way your saw's blade leans; left unless said
${COMMON}

Example, the chart cabinet's pen tray:
  mouldwright hopper --sides 4 --slope 60 --width 40 --length 240 --picture pen-tray.svg
`,
  unlike: `mouldwright unlike --first 54x50 --second 30x50 --spring 38 --corner 90
mouldwright unlike --first SECTION.svg --second JOB.json --corner 90

Two unlike mouldings at a corner, first and second from left to right as you face it: the mitre
leaves the middle of the corner, and bends where their faces are not in proportion.

  --first, --second    a section (SVG, DXF or job), or how far it comes out x how high it is
  --spring 38          the back's angle from the wall; from a section's own bevels unless said
  --second-spring 45   of the second, where it is another
  --from wall|ceiling  from where the springs are measured; the wall unless said
  --wall gauge|far     which edge of the sections lies at the wall; the far edge unless said
${CORNER}
  --leans right        which way your saw's blade leans; left unless said
${COMMON}

Examples, for the chart cabinet:
  mouldwright unlike --first cornice.json --second plinth.json --corner 90 --kind outside
  mouldwright unlike --first 54.5x50.7 --second 30x50.7 --spring 38 --corner 90 --picture meet.svg
`,
  frame: `mouldwright frame --sight 300x400 --width 30

  --sight 300x400      what is seen, across x up; or one of the three below instead
  --opening 316x416    the rebate's opening
  --glass 314x414      the glass, panel or picture
  --outside 360x460    over all
                       one side's length with --sides, or corners: "0,0 300,0 280,400 0,380"
  --sides 6            a regular frame of so many sides
  --width 30           of the moulding; or one for each side: 30,40,30,40
  --rebate 8           width of the rebate from the sight edge
  --allow 2            by how much the opening is larger than the glass, both sides together
  --timber "black cherry" --from 12 --to 6 --sawn flat
                       how the mitres open as the wood goes from one moisture to another, percent
${TIMBERS}
  --gap 0.3            the widest gap that is put up with: how wide, and which timbers
${COMMON}

Example, the barometer case:
  mouldwright frame --sight 90x620 --width 30 --rebate 8 --allow 2 --picture barometer.svg
`,
  cornice: `mouldwright cornice JOB.json

JOB.json names walls and corners from left to right as you face them, in millimetres:
  { "format": "mouldwright/cornice", "version": 1, "name": "Chart cabinet: cornice",
    "springFromWallDeg": 38, "projectionMm": 54.5, "heightMm": 50.7,
    "wallsMm": [380, 1240, 380],
    "corners": [{ "cornerDeg": 90, "kind": "outside" }, { "cornerDeg": 90, "kind": "outside" }],
    "start": "against a wall", "end": "against a wall" }

A corner may be measured by three lengths: "triangleMm": { "alongFirstMm", "alongSecondMm",
"acrossMm" }; its "joint" is "mitre", "scribe left" or "scribe right". Ends are "square",
"against a wall" or "return"; as many corners as walls close the run. With "sticks" (and
"allowances") as in a file for mouldwright lengths the pieces are marked along them.

  --section FILE       spring, projection and height from this section; also the scribe's outline
  --wall gauge|far     which edge of the stick lies at the wall; the far edge unless said
  --spring 38 --from wall|ceiling
                       the section's spring, if its own bevels do not say it
  --scribe FILE.svg    the outline of every scribed end at full size
  --rod FILE.svg       the pieces along their sticks
${COMMON}

Example:
  mouldwright cornice cabinet-cornice.json --section cornice.json --picture cornice-run.svg
`,
  rake: `mouldwright rake SECTION.svg|SECTION.dxf|JOB.json --slope 22.5
mouldwright rake --slope 22.5 --projection 25 --height 25

The sections of a level moulding, the rake above it and the upper return, from any one of the
three; or the three heights of one point.

  --slope 22.5         from level, 0 to 75
  --projection 25 --height 25
                       one point: how far from the wall, how high from the foot
  --given rake         which of the three was given: level, rake or return; level unless said
  --foot 90 --head 90  corners in plan at both ends of the slope, outside ones unless --kind inside
  --wall gauge|far     which edge of the stick lies at the wall; the far edge unless said
  --spring 38          the back's angle from the wall; from the section's own bevels unless said
  --from wall|ceiling  from where the spring is measured; the wall unless said
  --run 300            level run of the slope at the wall: how long the rake comes out
  --sections DIR       write the three sections into this folder, as drawings that plan reads
  --stick 42x18 --at 0,0
                       the stick and the section's place in it, as for plan
${COMMON}

Examples, for the chart cabinet's broken pediment:
  mouldwright rake cornice.json --slope 22.5 --run 300 --picture pediment.svg
  mouldwright rake cornice.json --slope 22.5 --sections pediment
`,
  hip: `mouldwright hip --slope 30

The hip (on an outside corner) or the valley (on an inside one) between two slopes over a corner.

  --slope 30           of the main side, from level, up to 85
  --adjacent 40        of the side next to it; the same unless said
  --jack 40.9          instead: the side cut measured on a board of the main side
  --corner 90          between the two eaves, from above; 90 unless said
  --kind inside        a valley
  --run 300            how far the main side runs level: how long the hip comes out
${COMMON}

Example, the little roof over the barometer case:
  mouldwright hip --slope 35 --run 120 --picture roof.svg
`,
  light: `mouldwright light SECTION.svg|SECTION.dxf|JOB.json

How a run of moulding will be seen from the front: which parts of its face lie in the light,
which are turned from it, which lie in the shadow of another part, and how wide each shows.

  --height 45          of the light above level, as drawn on the end of a level run; from below
                       as --height=-20. 45 and 45 are the drawing board's: a shadow is as deep
                       as what casts it stands out
  --direction 45       of the lamp in plan, from straight in front to the left; from the right
                       as --direction=-45
  --ambient 25         percent of the light that comes from the whole room; 25 unless said
  --run level|upright  a cornice or plinth runs level, a pilaster upright; level unless said
  --first gauge|far    the edge that hangs uppermost, of an upright run on the left; the gauge
                       edge unless said
  --spring 38          how far the back leans from the wall; from the section's own bevels, else
                       flat against the wall
  --from wall|ceiling  what the spring is measured from; the wall unless said
  --against OTHER      a second section in the same light and hung alike, beside the first
  --stick 42x18 --at 0,0
                       the stick and the section's place in it, as for plan
${COMMON}

Examples, for the chart cabinet:
  mouldwright light cornice.json --picture cornice-light.svg
  mouldwright light plinth.json --first far --against older-plinth.svg --picture both.svg
  mouldwright light pilaster.json --run upright --direction 60
`,
  lengths: `mouldwright lengths JOB.json

JOB.json names the pieces, in runs that meet at their ends, and the sticks at hand with their bad
places, in millimetres:
  { "format": "mouldwright/lengths", "version": 1, "name": "Barometer case: frame",
    "runs": [{ "name": "Rail", "ends": "closed",
               "pieces": [{ "lengthMm": 150 }, { "lengthMm": 680 },
                          { "lengthMm": 150 }, { "lengthMm": 680 }] }],
    "sticks": [{ "lengthMm": 2400, "count": 2,
                 "badPlaces": [{ "fromMm": 900, "toMm": 940, "why": "knot" }] }],
    "allowances": { "kerfMm": 1.5, "trimMm": 3, "planingMm": 50 } }

${COMMON}

Example:
  mouldwright lengths barometer-lengths.json --picture barometer-rod.svg
`,
  movement: `mouldwright movement --timber "black cherry" --width 60 --from 12 --to 6 --sawn flat

  --timber NAME        a timber of the table; near names are offered
  --width 60           across the grain; --thickness 22 as well if wanted
  --from 12 --to 6     moisture before and after, percent
  --sawn flat|quarter  flat: the growth rings lie across the width; quarter: upright to it
${TIMBERS}
${COMMON}

Example, the side of the chart cabinet over a heated winter:
  mouldwright movement --timber "black cherry" --width 450 --from 11 --to 7 --sawn flat
`,
  side: `mouldwright side --timber "black cherry" --sawn flat --depth 380
                 --fitted 9 --driest 6 --wettest 12 --screws 120,240,350

A moulding along the solid side of a case: the side moves across its grain, the moulding does not.

  --timber NAME        of the side; near names are offered
${TIMBERS}
  --sawn flat|quarter  how the side is sawn
  --depth 380          of the side, from front to back across its grain
  --fitted 9           moisture on the day of fitting, percent; see mouldwright moisture
  --driest 6 --wettest 12
                       what it will come to in the year, percent
  --screws 120,240     where the screws stand, from the front mitre
  --screw 4            shank of the screws; 4 mm unless said
${COMMON}

Example, the side of the chart cabinet under its cornice:
  mouldwright side --timber "black cherry" --sawn flat --depth 380 --fitted 9 --driest 6 \\
    --wettest 12 --screws 120,240,350 --picture side.svg
`,
  timber: `mouldwright timber [NAME]

Without a name the table of timbers; with one all that is known of it, each figure with its source.

${TIMBERS}
${COMMON}

Examples:
  mouldwright timber
  mouldwright timber black cherry --picture cherry.svg
`,
  moisture: `mouldwright moisture --temperature 21 --humidity 50

  --temperature 21     of the air in °C, below nought as --temperature=-5; 70F for °F
  --humidity 50        relative humidity of the air, percent
${COMMON}

Example, the harbour office in January:
  mouldwright moisture --temperature 19 --humidity 35
`,
} as const;

export const FIT_COMMANDS = [
  "stick",
  "mitre",
  "hopper",
  "unlike",
  "frame",
  "cornice",
  "rake",
  "hip",
  "light",
  "lengths",
  "movement",
  "side",
  "timber",
  "moisture",
] as const satisfies readonly (keyof typeof FIT_HELP)[];

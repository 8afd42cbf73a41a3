/** What `--help` shows of the sheets for the bench and of the files for other programs. */
export const SHEETS_HELP = {
  sheets: `mouldwright sheets JOB.json|PLAN.json --out FILE.pdf

Makes the sheets for the bench from a job, which is planned first, or from a plan: at full size
where they are laid on wood, each with a bar to measure.

  --out FILE.pdf       where the sheets go
  --pages LIST         which sheets, with commas between; all unless said:
                       bench   the card: what to fetch, lines to scribe, every cut with its picture
                       ends    templates for both ends of the stick, profile, sanding block
                       story   all distances on strips
                       planes  soles and irons, arcs to compare
                       fit     stick, saw, pieces
                       lesson  a student's handout
  --paper SIZE         a4, a3, letter or tabloid; a4 unless said
  --correct 100.4x99.8 what your printer made of 100 mm, across x up: the sheets are made again so
                       that it prints them true
  --date TEXT          printed in the foot as it is given; no date unless given
  --length 1200        length of the finished moulding, for the stick; 1 m unless said
  --cornice FILE       a run round a room or a case, for the fit sheet: lengths, joints, rod, and the
                       scribes at full size; --wall, --spring and --from as with mouldwright cornice
  --lengths FILE       pieces and sticks, drawn as a rod on the fit sheet
  --shelf SHELF.json   the planes on your shelf; a job may name its own
  --force              replace a file that stands there already
  --unit in|mm         of what is shown; a job's or a plan's own unless given
  --help               this page

Examples, for the chart cabinet:
  mouldwright sheets cornice.json --out cornice.pdf
  mouldwright sheets pilaster-plan.json --out pilaster.pdf --pages ends,story --paper letter --unit in
  mouldwright sheets cornice.json --out true.pdf --pages ends --correct 100.4x99.8
  mouldwright sheets cornice.json --out fit.pdf --pages fit --cornice cabinet-cornice.json
`,
  export: `mouldwright export JOB.json|PLAN.json --svg FILE.svg --dxf FILE.dxf --stl DIR

Writes what other programs take, in millimetres. One of the three, or all.

  --svg FILE.svg       stick, section, lines, centre lines, far end, profiles and the wood after
                       each cut, as layers
  --dxf FILE.dxf       the same as DXF
  --stl DIR            for a 3D printer: a length of the moulding, a sanding block, a depth gauge
  --length 100         length of moulding and block; 100 mm unless said
  --shelf SHELF.json   the planes on your shelf; a job may name its own
  --force              replace files that stand there already
  --unit in|mm         of what you type without a unit
  --help               this page

Example:
  mouldwright export cornice.json --dxf cornice.dxf --stl cornice-solids
`,
} as const;

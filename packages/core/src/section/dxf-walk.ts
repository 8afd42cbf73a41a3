/** Walks a DXF's entities, through its blocks, and gathers the runs drawn on each layer, in millimetres. */
import { DRAWN_ENTITIES, type DxfRun, entityRun, insertFacing } from "./dxf-entities.ts";
import { type DxfFile, type DxfRecord, numberOf, textOf } from "./dxf-tags.ts";
import { type Affine, after, scaling, shifting, turning } from "./read-affine.ts";
import { mapCurve } from "./read-curves.ts";
import { cleanName, DEEPEST_NESTING, FARTHEST_DRAWN_MM, isNear, MOST_POINTS } from "./read-limits.ts";
import { type Reading, refuse } from "./read-troubles.ts";

export interface LayeredRun extends DxfRun {
  /** In capitals: layers are the same whatever their case. */
  readonly layer: string;
}

export interface DxfDrawing {
  readonly runs: readonly LayeredRun[];
  /** Kinds of entity that are not read, with the layer they stand on. */
  readonly leftOut: readonly { readonly type: string; readonly layer: string }[];
}

interface Block {
  readonly records: readonly DxfRecord[];
  readonly baseX: number;
  readonly baseY: number;
}

export function dxfDrawing(reading: Reading, file: DxfFile, unitMm: number): DxfDrawing {
  const blocks = blocksOf(file.blocks);
  const hidden = hiddenLayers(file.layers);
  const runs: LayeredRun[] = [];
  const leftOut: { type: string; layer: string }[] = [];
  let seen = 0;

  const walk = (records: readonly DxfRecord[], map: Affine, insertLayer: string, depth: number): void => {
    for (let i = 0; i < records.length && reading.refusal === null; i++) {
      const record = records[i]!;
      const vertices: DxfRecord[] = [];
      if (record.type === "POLYLINE") while (records[i + 1]?.type === "VERTEX") vertices.push(records[++i]!);
      if (++seen > MOST_POINTS) {
        refuse(reading, "drawing-too-many-points", "", { most: MOST_POINTS });
        return;
      }
      const drawnOn = layerOf(record);
      // What stands in a block on layer 0 takes the layer of the insert.
      const layer = drawnOn === "0" && depth > 0 ? insertLayer : drawnOn;
      const isPaper = numberOf(record, 67, 0) === 1 && depth === 0;
      const isInvisible = numberOf(record, 60, 0) === 1;
      if (isPaper || isInvisible || hidden.has(layer)) continue;
      if (record.type === "INSERT") insert(record, map, layer, depth);
      else if (DRAWN_ENTITIES.has(record.type)) draw(record, vertices, map, layer);
      else if (!SILENT.has(record.type)) leftOut.push({ type: cleanName(record.type), layer });
    }
  };

  const draw = (record: DxfRecord, vertices: readonly DxfRecord[], map: Affine, layer: string): void => {
    const run = entityRun(record, vertices);
    const where = `line ${record.line}`;
    if (run === "dxf-out-of-plane") refuse(reading, run, where, { entity: record.type, line: record.line });
    else if (run === "dxf-entity-broken")
      refuse(reading, run, where, {
        entity: record.type,
        layer: cleanName(layer),
        line: record.line,
      });
    if (typeof run === "string") return;
    seen += run.curves.length;
    if (run.curves.length === 0) return;
    const curves = run.curves.map((curve) => mapCurve(map, curve));
    // Before ends are looked for on a grid, where such numbers would have no neighbours.
    if (!curves.every(({ from, to }) => isNear(from) && isNear(to))) {
      refuse(reading, "drawing-number-absurd", where, { farthestMm: FARTHEST_DRAWN_MM });
      return;
    }
    runs.push({ curves, closed: run.closed, layer });
  };

  const insert = (record: DxfRecord, map: Affine, layer: string, depth: number): void => {
    const name = textOf(record, 2) ?? "";
    const where = `line ${record.line}`;
    if (depth >= DEEPEST_NESTING) {
      refuse(reading, "drawing-too-deep", where, { deepest: DEEPEST_NESTING });
      return;
    }
    const block = blocks.get(name.toUpperCase());
    if (block === undefined) {
      refuse(reading, "dxf-block-missing", where, { block: cleanName(name), line: record.line });
      return;
    }
    const facing = insertFacing(record);
    if (facing === null) {
      refuse(reading, "dxf-out-of-plane", where, { entity: "INSERT", line: record.line });
      return;
    }
    for (const place of insertPlaces(record, block)) {
      if (place === null) {
        refuse(reading, "dxf-entity-broken", where, {
          entity: "INSERT",
          layer: cleanName(layer),
          line: record.line,
        });
        return;
      }
      if (reading.refusal !== null) return;
      // Counted here too: a block of nothing inserted a million times draws nothing but takes its time.
      if (++seen > MOST_POINTS) {
        refuse(reading, "drawing-too-many-points", "", { most: MOST_POINTS });
        return;
      }
      walk(block.records, after(map, after(facing, place)), layer, depth + 1);
    }
  };

  walk(file.entities, scaling(unitMm, unitMm), "0", 0);
  return { runs, leftOut };
}

/** Records that belong to others or draw nothing. */
const SILENT: ReadonlySet<string> = new Set(["VERTEX", "SEQEND", "ATTRIB", "ATTDEF", "VIEWPORT", "POINT"]);

/** One map per copy of a (possibly arrayed) insert; null where a number cannot be read. */
function* insertPlaces(record: DxfRecord, block: Block): Generator<Affine | null> {
  const x = numberOf(record, 10, 0);
  const y = numberOf(record, 20, 0);
  const scaleX = numberOf(record, 41, 1);
  const scaleY = numberOf(record, 42, 1);
  const turnRad = (numberOf(record, 50, 0) * Math.PI) / 180;
  const columns = Math.max(1, numberOf(record, 70, 1));
  const rows = Math.max(1, numberOf(record, 71, 1));
  const columnStep = numberOf(record, 44, 0);
  const rowStep = numberOf(record, 45, 0);
  const numbers = [x, y, scaleX, scaleY, turnRad, columns, rows, columnStep, rowStep];
  if (!numbers.every(Number.isFinite)) {
    yield null;
    return;
  }
  const atBase = after(scaling(scaleX, scaleY), shifting(-block.baseX, -block.baseY));
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < rows; row++) {
      const copy = after(shifting(column * columnStep, row * rowStep), atBase);
      yield after(shifting(x, y), after(turning(turnRad), copy));
    }
  }
}

function blocksOf(records: readonly DxfRecord[]): ReadonlyMap<string, Block> {
  const blocks = new Map<string, Block>();
  let inside: DxfRecord[] | null = null;
  for (const record of records) {
    if (record.type === "BLOCK") {
      inside = [];
      const name = textOf(record, 2) ?? "";
      blocks.set(name.toUpperCase(), {
        records: inside,
        baseX: numberOf(record, 10, 0),
        baseY: numberOf(record, 20, 0),
      });
    } else if (record.type === "ENDBLK") inside = null;
    else inside?.push(record);
  }
  return blocks;
}

/** Layers that are frozen (flag 1) or switched off (negative colour). */
function hiddenLayers(records: readonly DxfRecord[]): ReadonlySet<string> {
  const hidden = new Set<string>();
  for (const record of records) {
    const isFrozen = (numberOf(record, 70, 0) & 1) === 1;
    const isOff = numberOf(record, 62, 0) < 0;
    if (isFrozen || isOff) hidden.add((textOf(record, 2) ?? "").toUpperCase());
  }
  return hidden;
}

function layerOf(record: DxfRecord): string {
  return (textOf(record, 8) ?? "0").toUpperCase();
}

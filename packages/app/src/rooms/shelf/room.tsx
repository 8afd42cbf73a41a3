/** The maker's planes: what stands on the shelf, what this job uses of it, and how planes come and go. */
import type { Plane } from "mouldwright/shelf";
import { useCallback, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { Choice } from "../../common/choice.tsx";
import { Drawer } from "../../common/drawer.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { saveFile } from "../../common/save-file.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { usePlanIsOld } from "../../planner/plan-on-bench.ts";
import { AddPlanes } from "./add-planes.tsx";
import { BringInButton, BringInNotices, useBringIn } from "./bring-in.tsx";
import { EmptyShelf } from "./empty-shelf.tsx";
import { PlaneDetails, RemovedNotice } from "./plane-details.tsx";
import { planeExtent } from "./plane-drawing.ts";
import { KIND_WORDS } from "./plane-fields.ts";
import { PlaneTile } from "./plane-tile.tsx";
import "./shelf.css";
import { SHELF_FILE_NAME, shelfBlob } from "./shelf-files.ts";
import { groupsOf, type PlaneGroup } from "./shelf-list.ts";
import { type ShelfOfJob, useShelf } from "./use-shelf.ts";

const SHOWN = [
  { value: "all", words: "All" },
  { value: "used", words: "Used in this job" },
  { value: "out", words: "Left out" },
] as const;
type Shown = (typeof SHOWN)[number]["value"];

export function Content() {
  const shelfOfJob = useShelf();
  const { shelf, troubles } = shelfOfJob;
  const [openId, setOpenId] = useState<string | null>(null);
  const [isAdding, setIsAdding] = useState(false);
  const [shown, setShown] = useState<Shown>("all");
  const [removed, setRemoved] = useState<string | null>(null);
  const bringIn = useBringIn({ hasPlanes: shelf.planes.length > 0 });
  const open = shelf.planes.find(({ id }) => id === openId);
  const onOpen = useCallback((id: string) => setOpenId(id), []);
  const isEmpty = shelf.planes.length === 0;
  return (
    <div className="shelf-room">
      <div className="shelf-head">
        <h1>Shelf</h1>
        <ShelfCount {...shelfOfJob} />
        <div className="tools shelf-tools">
          <Button className="button button-main" onPress={() => setIsAdding(true)}>
            Add planes
          </Button>
          <BringInButton read={bringIn.read} words="Bring in a shelf" />
          <Button
            className="button"
            isDisabled={isEmpty}
            onPress={() => saveFile(SHELF_FILE_NAME, shelfBlob(shelf))}
          >
            Save the shelf
          </Button>
          <Button className="button shelf-print" isDisabled={isEmpty} onPress={() => print()}>
            Print
          </Button>
        </div>
      </div>
      <TroubleWords troubles={troubles} />
      <BringInNotices bringIn={bringIn} />
      {removed === null ? null : <RemovedNotice name={removed} onDone={() => setRemoved(null)} />}
      {isEmpty && troubles.length === 0 ? (
        <EmptyShelf onAdd={() => setIsAdding(true)} />
      ) : (
        <>
          <div className="shelf-shown">
            <Choice label="Planes to show" value={shown} options={SHOWN} onChange={setShown} />
          </div>
          <ShelfGroups {...shelfOfJob} shown={shown} onOpen={onOpen} />
        </>
      )}
      <Drawer title={open?.name ?? "Plane"} isOpen={open !== undefined} onClose={() => setOpenId(null)}>
        {open === undefined ? null : (
          <PlaneDetails
            key={open.id}
            plane={open}
            onRemoved={(name) => {
              setOpenId(null);
              setRemoved(name);
            }}
          />
        )}
      </Drawer>
      <Drawer title="Add planes" isOpen={isAdding} onClose={() => setIsAdding(false)}>
        <AddPlanes />
      </Drawer>
    </div>
  );
}

function ShelfCount({ shelf, uses, leftOut }: ShelfOfJob) {
  const isOld = usePlanIsOld();
  const used = shelf.planes.filter(({ id }) => uses.has(id)).length;
  const count = shelf.planes.length;
  if (count === 0) return null;
  const planes = count === 1 ? "1 plane" : `${count} planes`;
  const out = leftOut.size === 0 ? "" : `, ${leftOut.size} left out`;
  return (
    <p className="quiet figures shelf-count">
      {planes}
      {uses.size === 0 ? "" : `, ${used} used in this job${isOld ? " as last planned" : ""}`}
      {out}.
    </p>
  );
}

function ShelfGroups({
  shelf,
  uses,
  leftOut,
  shown,
  onOpen,
}: ShelfOfJob & { readonly shown: Shown; readonly onOpen: (id: string) => void }) {
  const groups = useMemo(() => groupsOf(shelf), [shelf]);
  const isShown = ({ id }: Plane): boolean =>
    shown === "all" || (shown === "used" ? uses.has(id) : leftOut.has(id));
  const visible = groups.flatMap((group) => {
    const planes = group.planes.filter(isShown);
    return planes.length === 0 ? [] : [{ ...group, planes }];
  });
  if (visible.length === 0) {
    return (
      <p className="shelf-none">
        {shown === "used"
          ? "The plan of this job uses no plane of the shelf yet. Planes it uses stand here, with the numbers of their cuts."
          : "No plane is left out of this job. Open a plane and press “Leave out of this job”: it is then planned without it."}
      </p>
    );
  }
  return (
    <div className="shelf-groups">
      {visible.map((group) => (
        <Group key={group.kind} group={group} uses={uses} leftOut={leftOut} onOpen={onOpen} />
      ))}
    </div>
  );
}

/** The largest of a kind fills its tile, mm on paper; nothing is drawn larger than so many times. */
const TILE_MM = { width: 27, height: 12 } as const;
const MOST_TIMES = 3;
/** A kind of so few planes shares its row with others. */
const FEW = 6;
const TILE_REM = 8.2;

function Group({
  group,
  uses,
  leftOut,
  onOpen,
}: Pick<ShelfOfJob, "uses" | "leftOut"> & {
  readonly group: PlaneGroup;
  readonly onOpen: (id: string) => void;
}) {
  const { unit } = useLengthWords();
  const extents = group.planes.map(planeExtent);
  const widest = Math.max(...extents.map(({ widthMm }) => widthMm));
  const highest = Math.max(...extents.map(({ heightMm }) => heightMm));
  const scaleRatio = Math.min(MOST_TIMES, TILE_MM.width / widest, TILE_MM.height / highest);
  const count = group.planes.length;
  const words = KIND_WORDS[group.kind];
  return (
    <section
      className="shelf-group"
      aria-label={words.many}
      style={{ width: count > FEW ? "100%" : `min(100%, ${count * TILE_REM}rem)` }}
    >
      <h2>
        {count === 1 ? words.one : words.many}
        {count === 1 ? null : <span className="quiet figures"> {count}</span>}
      </h2>
      <div className="shelf-board">
        {group.planes.map((plane) => (
          <PlaneTile
            key={plane.id}
            plane={plane}
            scaleRatio={scaleRatio}
            use={uses.get(plane.id)}
            isLeftOut={leftOut.has(plane.id)}
            unit={unit}
            onOpen={onOpen}
          />
        ))}
      </div>
    </section>
  );
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fittedView, onBoard, onStick, pinchedTo, scaleBarMm, zoomedAbout } from "./board-view.ts";

const SIZE = { widthPx: 800, heightPx: 500 };
const MARGINS = { left: 60, right: 60, top: 50, bottom: 70 };

describe("the view of the board", () => {
  it("fits the stick between its margins, in the middle", () => {
    const view = fittedView(SIZE, { widthMm: 68, thicknessMm: 22 }, MARGINS);
    expect(view.pxPerMm).toBe(10);
    expect(onBoard(view, { x: 0, y: 0 }).x).toBe(60);
    expect(onBoard(view, { x: 68, y: 22 }).x).toBe(740);
    const [top, bottom] = [onBoard(view, { x: 0, y: 22 }).y, onBoard(view, { x: 0, y: 0 }).y];
    expect(top - MARGINS.top).toBeCloseTo(SIZE.heightPx - MARGINS.bottom - bottom, 9);
  });

  it("to the board and back is the same place", () => {
    const place = fc.double({ min: -300, max: 300, noNaN: true });
    fc.assert(
      fc.property(place, place, fc.double({ min: 1, max: 200, noNaN: true }), (x, y, pxPerMm) => {
        const view = { pxPerMm, originX: 31, originY: 402 };
        const back = onStick(view, onBoard(view, { x, y }));
        expect(back.x).toBeCloseTo(x, 8);
        expect(back.y).toBeCloseTo(y, 8);
      }),
      { seed: 51 },
    );
  });

  it("zooming leaves the place under the finger where it is", () => {
    const view = fittedView(SIZE, { widthMm: 68, thicknessMm: 22 }, MARGINS);
    const at = { x: 210, y: 180 };
    const before = onStick(view, at);
    const after = onStick(zoomedAbout(view, at, 3), at);
    expect(after.x).toBeCloseTo(before.x, 9);
    expect(after.y).toBeCloseTo(before.y, 9);
  });

  it("two fingers apart by twice as much make it twice as large", () => {
    const view = fittedView(SIZE, { widthMm: 68, thicknessMm: 22 }, MARGINS);
    const wide = pinchedTo(
      view,
      [
        { x: 100, y: 100 },
        { x: 200, y: 100 },
      ],
      [
        { x: 50, y: 100 },
        { x: 250, y: 100 },
      ],
    );
    expect(wide.pxPerMm).toBeCloseTo(2 * view.pxPerMm, 9);
  });

  it("the scale bar is a round length that has room", () => {
    expect(scaleBarMm(10, 140, "mm")).toBe(10);
    expect(scaleBarMm(10, 140, "in")).toBe(12.7);
    expect(scaleBarMm(0.5, 140, "mm")).toBe(200);
  });
});

/**
 * What committed plans still hold that no woodworker would believe. Each stands as a test that fails until it is put
 * right; then its rule here goes.
 */
import type { BelievedRule } from "./rules.ts";

export const STILL_UNBELIEVED: Readonly<Record<string, readonly BelievedRule[]>> = {
  "gallery/architrave": ["overlapping grooves", "dropped into a face"],
  "gallery/attic-base": ["overlapping grooves", "dropped into a face"],
  "gallery/cavetto-large": ["dropped into a face"],
  "gallery/chart-cornice": ["dropped into a face"],
  "gallery/cornice-fourteen": ["plunged slot", "dropped into a face"],
  "gallery/cornice-sixteen": ["overlapping grooves", "plunged slot", "dropped into a face"],
  "gallery/cornice-ten": ["overlapping grooves", "poses without a reason", "dropped into a face"],
  "gallery/cyma-recta-flat-large": ["dropped into a face"],
  "gallery/cyma-recta-thick": ["free lean"],
  "gallery/cyma-recta-uneven": ["poses without a reason"],
  "gallery/free-ogee-small-shelf": ["poses without a reason", "free lean"],
  "gallery/free-serpentine": ["dropped into a face", "free lean"],
  "gallery/quarter-ellipse-steep": ["free lean"],
  "gallery/radii-not-on-shelf": ["poses without a reason"],
  "gallery/scotia-large": ["dropped into a face"],
  "gallery/scotia-small": ["overlapping grooves", "free lean"],
  "gallery/thin-strip-cove": ["free lean"],
  "gallery/three-coves": ["dropped into a face"],
  "examples/cornice": ["dropped into a face"],
};

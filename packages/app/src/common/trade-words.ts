/** Words of the trade, each in a sentence or two. Common practice, no source. */
export const TRADE_WORDS = {
  hollow: "A plane with a concave sole: it leaves a round.",
  round: "A plane with a convex sole: it leaves a hollow.",
  "snipe bill":
    "A narrow plane with a sharp beak and one upright side: it runs a thin line for other planes to follow.",
  "rebate plane":
    "A narrow plane whose iron is as wide as its sole: it cuts flats and the walls beside them.",
  quirk: "A narrow groove that sets a bead or an ogee off from what lies beside it.",
  fillet: "A narrow flat between two shapes.",
  bead: "A small half-round.",
  ovolo: "A convex quarter.",
  cavetto: "A hollow quarter.",
  scotia: "A deep hollow of two curves.",
  ogee: "A hollow and a round that run into each other in one S.",
  astragal: "A half-round that stands proud on a flat.",
  reeds: "Beads side by side.",
  flutes: "Hollows side by side.",
  step: "An upright wall from one flat to another.",
  arris: "A sharp edge where two faces meet.",
  "gauge edge": "The edge that every line across the stick is measured from.",
  spring: "How far a moulding leans between wall and ceiling instead of standing solid.",
  cant: "How far the stick is turned on the bench while it is planed.",
  lean: "How far the plane is tipped sideways in the hand.",
  seat: "What a plane rests in or runs against, so that it cannot wander.",
  waste: "Wood that goes.",
  setting: "One plane, set once, against one line or edge.",
  overcut: "A cut that goes into wood which belongs to the moulding.",
  proud: "Standing out beyond where it should be.",
  "test piece": "A short length of the same wood, run first at each setting.",
  mitre: "Two pieces that meet at a corner, each cut to half of it.",
  sticking: "Running a moulding on a stick of wood.",
} as const satisfies Record<string, string>;

export type TradeWord = keyof typeof TRADE_WORDS;

/**
 * The moulding in three dimensions, as far as a picture goes: the solid is the core's, the lamp stands in the core's
 * direction, brightness follows the core's formula (a matt face; the room's share like a half dome in front). Drawn only
 * when something has changed.
 */
import type { Lamp } from "mouldwright/light";
import { lightDirection } from "mouldwright/light";
import { toRad } from "mouldwright/measure";
import {
  BoxGeometry,
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  DirectionalLight,
  HemisphereLight,
  LinearFilter,
  LinearMipmapLinearFilter,
  Mesh,
  MeshLambertMaterial,
  PCFShadowMap,
  PerspectiveCamera,
  RepeatWrapping,
  RGBAFormat,
  Scene,
  SRGBColorSpace,
  UnsignedByteType,
  Vector3,
  WebGLRenderer,
} from "three";
import { toCreasedNormals } from "three/addons/utils/BufferGeometryUtils.js";
import { grainDots } from "./grain.ts";
import type { TurnedSolid } from "./messages.ts";
import { PLASTER_RGB, type Rgb, WOOD_RGB } from "./tone-colour.ts";
import type { Turn } from "./turn.ts";

export interface TurningScene {
  readonly showSolid: (solid: TurnedSolid) => void;
  readonly shine: (lamp: Lamp) => void;
  readonly turn: (turn: Turn) => void;
  readonly resize: (widthPx: number, heightPx: number, dotsRatio: number) => void;
  /** Frees everything it holds on the graphics card. */
  readonly close: () => void;
}

const EYE_DEG = 28;
const SHADOW_DOTS = 2048;
/** Faces that meet at less than this are of one curve, degrees. */
const SMOOTH_DEG = 14;

/** Draws on a canvas of its own, put into `stage`. Throws where the browser has no WebGL. */
export function openScene(stage: HTMLElement): TurningScene {
  const renderer = new WebGLRenderer({ antialias: true, alpha: true });
  stage.append(renderer.domElement);
  renderer.shadowMap.enabled = true;
  renderer.shadowMap.type = PCFShadowMap;
  renderer.shadowMap.autoUpdate = false;
  const scene = new Scene();
  const camera = new PerspectiveCamera(EYE_DEG, 1, 1, 10_000);
  const lampLight = new DirectionalLight(0xffffff, 1);
  lampLight.castShadow = true;
  lampLight.shadow.mapSize.set(SHADOW_DOTS, SHADOW_DOTS);
  // What the room sends back comes from in front, most on faces that look there.
  const roomLight = new HemisphereLight(0xffffff, 0x000000, 1);
  roomLight.position.set(0, 0, 1);
  scene.add(lampLight, lampLight.target, roomLight);
  const grain = grainTexture();
  const wood = new MeshLambertMaterial({ color: colourOf(WOOD_RGB), map: grain });
  const plaster = new MeshLambertMaterial({ color: colourOf(PLASTER_RGB) });
  let meshes: readonly Mesh[] = [];
  let frame: Frame = { middle: new Vector3(), reachMm: 100 };
  let lamp: Lamp = { heightDeg: 45, directionDeg: 45, ambientRatio: 0.25 };
  let turn: Turn = { yawDeg: 0, pitchDeg: 0, zoomRatio: 1 };
  let asked = 0;

  const draw = (): void => {
    asked = 0;
    placeEye(camera, frame, turn);
    renderer.render(scene, camera);
  };
  const ask = (): void => {
    if (asked === 0) asked = requestAnimationFrame(draw);
  };
  const clear = (): void => {
    for (const mesh of meshes) {
      scene.remove(mesh);
      mesh.geometry.dispose();
    }
    meshes = [];
  };
  const shine = (): void => {
    placeLamp(lampLight, roomLight, frame, lamp);
    renderer.shadowMap.needsUpdate = true;
    ask();
  };
  return {
    showSolid: (solid) => {
      clear();
      const pieces = solid.pieces.map((numbers, index) => {
        const mesh = new Mesh(pieceGeometry(numbers, solid, index), wood);
        mesh.castShadow = true;
        mesh.receiveShadow = true;
        return mesh;
      });
      const walls = wallBoxes(solid).map((geometry) => {
        const mesh = new Mesh(geometry, plaster);
        mesh.castShadow = true;
        mesh.receiveShadow = true;
        return mesh;
      });
      meshes = [...pieces, ...walls];
      scene.add(...meshes);
      frame = frameOf(solid);
      shine();
    },
    shine: (next) => {
      lamp = next;
      shine();
    },
    turn: (next) => {
      turn = next;
      ask();
    },
    resize: (widthPx, heightPx, dotsRatio) => {
      renderer.setPixelRatio(dotsRatio);
      renderer.setSize(widthPx, heightPx, false);
      camera.aspect = widthPx / Math.max(1, heightPx);
      camera.updateProjectionMatrix();
      ask();
    },
    close: () => {
      if (asked !== 0) cancelAnimationFrame(asked);
      clear();
      grain.dispose();
      wood.dispose();
      plaster.dispose();
      lampLight.dispose();
      roomLight.dispose();
      renderer.dispose();
      renderer.forceContextLoss();
      renderer.domElement.remove();
    },
  };
}

/** What the eye and the lamp look at. */
interface Frame {
  readonly middle: Vector3;
  readonly reachMm: number;
}

function frameOf({ run, corner, lengthMm, widthMm, projectionMm }: TurnedSolid): Frame {
  const half = lengthMm / 2;
  const middle =
    run === "upright"
      ? new Vector3(
          corner === "none" ? widthMm / 2 : half * 0.7,
          corner === "none" ? -half : -half * 0.7,
          projectionMm / 2,
        )
      : new Vector3(
          corner === "none" ? -half : -half * 0.55,
          widthMm / 2,
          corner === "outside" ? -half * 0.55 : corner === "inside" ? half * 0.55 : projectionMm / 2,
        );
  return { middle, reachMm: lengthMm * (corner === "none" ? 0.68 : 0.92) };
}

function placeEye(camera: PerspectiveCamera, { middle, reachMm }: Frame, turn: Turn): void {
  const yaw = toRad(turn.yawDeg);
  const pitch = toRad(turn.pitchDeg);
  // The whole sphere is seen, on a narrow screen too.
  const narrowest = Math.min(1, camera.aspect) * Math.tan(toRad(EYE_DEG / 2));
  const awayMm = reachMm / narrowest / turn.zoomRatio;
  camera.position.set(
    middle.x + awayMm * Math.sin(yaw) * Math.cos(pitch),
    middle.y + awayMm * Math.sin(pitch),
    middle.z + awayMm * Math.cos(yaw) * Math.cos(pitch),
  );
  camera.near = Math.max(1, awayMm - 3 * reachMm);
  camera.far = awayMm + 3 * reachMm;
  camera.updateProjectionMatrix();
  camera.lookAt(middle);
}

function placeLamp(
  lampLight: DirectionalLight,
  roomLight: HemisphereLight,
  { middle, reachMm }: Frame,
  lamp: Lamp,
): void {
  const { right, up, out } = lightDirection(lamp);
  const awayMm = 4 * reachMm;
  lampLight.target.position.copy(middle);
  lampLight.position.set(middle.x - right * awayMm, middle.y - up * awayMm, middle.z - out * awayMm);
  // A matt face square on to all the light shows its own colour: the library divides by pi.
  lampLight.intensity = Math.PI * (1 - lamp.ambientRatio);
  roomLight.intensity = Math.PI * lamp.ambientRatio;
  const { camera, normalBias: _ } = Object.assign(lampLight.shadow, {
    normalBias: (3 * reachMm) / SHADOW_DOTS,
  });
  camera.left = -1.3 * reachMm;
  camera.right = 1.3 * reachMm;
  camera.top = 1.3 * reachMm;
  camera.bottom = -1.3 * reachMm;
  camera.near = awayMm - 2.5 * reachMm;
  camera.far = awayMm + 2.5 * reachMm;
  camera.updateProjectionMatrix();
}

/** A piece of grain is so long and so wide on the wood, mm. */
const GRAIN_MM = { along: 260, across: 42 } as const;

/** Triangles with normals that are smooth along curves and sharp at arrises, and grain that runs along the piece. */
function pieceGeometry(numbers: Float32Array, solid: TurnedSolid, index: number): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(numbers, 3));
  const places = new Float32Array((numbers.length / 3) * 2);
  const isSecond = index === 1;
  for (let corner = 0; corner < numbers.length / 3; corner++) {
    const [x = 0, y = 0, z = 0] = numbers.subarray(corner * 3, corner * 3 + 3);
    const along = solid.run === "level" ? (isSecond ? z : x) : isSecond ? x : y;
    const aside = x + y + z - along;
    places[corner * 2] = along / GRAIN_MM.along + index * 0.37;
    places[corner * 2 + 1] = aside / GRAIN_MM.across + index * 0.21;
  }
  geometry.setAttribute("uv", new BufferAttribute(places, 2));
  const creased = toCreasedNormals(geometry, toRad(SMOOTH_DEG));
  if (creased !== geometry) geometry.dispose();
  return creased;
}

const WALL_THICK_MM = 8;
const WALL_OVER_RATIO = 0.45;

/** What the moulding is fixed to: a case's corner, a room's, or a plain wall. */
function wallBoxes({ run, corner, lengthMm, widthMm }: TurnedSolid): readonly BoxGeometry[] {
  const box = (fromX: number, toX: number, fromY: number, toY: number, fromZ: number, toZ: number) =>
    new BoxGeometry(toX - fromX, toY - fromY, toZ - fromZ).translate(
      (fromX + toX) / 2,
      (fromY + toY) / 2,
      (fromZ + toZ) / 2,
    );
  const over = widthMm * WALL_OVER_RATIO;
  if (run === "upright") {
    return corner === "none"
      ? [box(-over, widthMm + over, -lengthMm, 0, -WALL_THICK_MM, 0)]
      : [box(-over, lengthMm, -lengthMm, over, -WALL_THICK_MM, 0)];
  }
  const low = -over;
  const high = widthMm + over;
  if (corner === "outside") return [box(-lengthMm, 0, low, high, -lengthMm, 0)];
  const along = box(-lengthMm, 0, low, high, -WALL_THICK_MM, 0);
  return corner === "none" ? [along] : [along, box(0, WALL_THICK_MM, low, high, -WALL_THICK_MM, lengthMm)];
}

const GRAIN_DOTS = { along: 256, across: 128 } as const;

function grainTexture(): DataTexture {
  const { along, across } = GRAIN_DOTS;
  const dots = grainDots(along, across);
  const bytes = new Uint8Array(along * across * 4);
  for (const [index, brightness] of dots.entries()) {
    bytes.fill(Math.round(brightness * 255), index * 4, index * 4 + 3);
    bytes[index * 4 + 3] = 255;
  }
  const texture = new DataTexture(bytes, along, across, RGBAFormat, UnsignedByteType);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.generateMipmaps = true;
  texture.anisotropy = 4;
  texture.needsUpdate = true;
  return texture;
}

function colourOf([red, green, blue]: Rgb): Color {
  return new Color().setRGB(red / 255, green / 255, blue / 255, SRGBColorSpace);
}

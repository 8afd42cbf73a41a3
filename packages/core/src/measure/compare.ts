/**
 * Lengths are compared here and nowhere else, each time with its slack. NaN answers "no" to every question, so a
 * limit can never be passed by it; constructors refuse it by name long before (`requireFinite`).
 */
import { SAME_POINT_MM } from "./tolerance.ts";
import { bug } from "./trouble.ts";

/** Do two lengths differ by the tolerance or less? Inclusive. All mm. */
export function sameMm(aMm: number, bMm: number, tolMm: number = SAME_POINT_MM): boolean {
  return Math.abs(aMm - bMm) <= tolMm;
}

/** Is a length more than its limit by more than the tolerance? Exclusive: limit + tolerance itself is allowed. All mm. */
export function exceedsMm(lengthMm: number, limitMm: number, tolMm: number = SAME_POINT_MM): boolean {
  return lengthMm > limitMm + tolMm;
}

/** Is a length its limit or less, slack allowed? Inclusive; the opposite of `exceedsMm` except for NaN. All mm. */
export function atMostMm(lengthMm: number, limitMm: number, tolMm: number = SAME_POINT_MM): boolean {
  return lengthMm <= limitMm + tolMm;
}

/** Is a length its limit or more, slack allowed? Inclusive. All mm. */
export function atLeastMm(lengthMm: number, limitMm: number, tolMm: number = SAME_POINT_MM): boolean {
  return lengthMm >= limitMm - tolMm;
}

/** Gives the value back, or throws a bug that names it: for constructors and public functions. */
export function requireFinite(name: string, value: number): number {
  if (!Number.isFinite(value)) bug(`${name} must be a finite number`, { [name]: String(value) });
  return value;
}

/** As `requireFinite`, and greater than zero. */
export function requirePositive(name: string, value: number): number {
  requireFinite(name, value);
  if (value <= 0) bug(`${name} must be greater than zero`, { [name]: value });
  return value;
}

/** As `requireFinite`, and zero or more. */
export function requireNotNegative(name: string, value: number): number {
  requireFinite(name, value);
  if (value < 0) bug(`${name} must be zero or more`, { [name]: value });
  return value;
}

/** As `requireFinite`, and from `least` to `most`, both allowed. */
export function requireBetween(name: string, value: number, least: number, most: number): number {
  requireFinite(name, value);
  if (value < least || value > most) {
    bug(`${name} must be from ${least} to ${most}`, { [name]: value, least, most });
  }
  return value;
}

/** As `requireFinite`, and a whole number, zero or more: counts and indices. */
export function requireCount(name: string, value: number): number {
  requireNotNegative(name, value);
  if (!Number.isSafeInteger(value)) bug(`${name} must be a whole number`, { [name]: value });
  return value;
}

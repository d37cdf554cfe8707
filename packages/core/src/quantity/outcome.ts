/**
 * What an engine can say. `missing` names the record fields that would be needed, by path; it is never read as good.
 * `refused` means the question has no answer as put (its code says why).
 */
export type Outcome<T> =
  | { readonly kind: "known"; readonly value: T }
  | { readonly kind: "missing"; readonly needs: readonly string[] }
  | { readonly kind: "refused"; readonly code: string; readonly because: string };

export const known = <T>(value: T): Outcome<T> => ({ kind: "known", value });
export const missing = (...needs: string[]): Outcome<never> => ({ kind: "missing", needs });
export const refused = (code: string, because: string): Outcome<never> => ({ kind: "refused", code, because });

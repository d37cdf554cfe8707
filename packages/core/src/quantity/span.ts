/** The closed interval a figure may lie in, lo <= hi, in the unit of the name that holds it. */
export interface Span {
  readonly lo: number;
  readonly hi: number;
}

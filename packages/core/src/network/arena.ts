/** Room for many small arrays in few buffers: making a buffer costs more than solving a small network does. Everything starts at zero. */
export class Arena {
  private buffer = new ArrayBuffer(0);
  private used = 0;
  private chunkBytes = 64;

  f64(length: number): Float64Array {
    const start = this.take(8 * length);
    return new Float64Array(this.buffer, start, length);
  }

  i32(length: number): Int32Array {
    const start = this.take(4 * length);
    return new Int32Array(this.buffer, start, length);
  }

  u8(length: number): Uint8Array {
    const start = this.take(length);
    return new Uint8Array(this.buffer, start, length);
  }

  /** Where the next so many bytes start; `buffer` is then the one they are in. */
  private take(bytes: number): number {
    const whole = (bytes + 7) & ~7;
    if (this.used + whole > this.buffer.byteLength) {
      this.chunkBytes = Math.min(MOST_CHUNK_BYTES, 8 * this.chunkBytes);
      this.buffer = new ArrayBuffer(Math.max(this.chunkBytes, whole));
      this.used = 0;
    }
    const start = this.used;
    this.used += whole;
    return start;
  }
}

const MOST_CHUNK_BYTES = 1 << 16;

import { describe, expect, it } from "vitest";
import { memoryIo } from "./memory-io.js";
import { writePicture } from "./picture-output.js";

const known = () => ({ kind: "known" as const, value: "<svg/>" });

describe("--svg", () => {
  it("writes nothing where it is not asked, and keeps a file that is there", async () => {
    const io = memoryIo({ "old.svg": "kept" });
    expect(await writePicture(io, {}, known)).toBeUndefined();
    await expect(writePicture(io, { svg: "old.svg" }, known)).rejects.toThrow(/say --replace/);
    expect(await writePicture(io, { svg: "old.svg", replace: true }, known)).toBe("old.svg");
    expect(new TextDecoder().decode(io.files.get("old.svg"))).toBe("<svg/>");
  });

  it("passes theme and width on, and names what it wanted instead of others", async () => {
    const io = memoryIo();
    let asked: unknown;
    await writePicture(io, { svg: "a.svg", theme: "night", width: "390" }, (look) => {
      asked = look;
      return known();
    });
    expect(asked).toEqual({ theme: "night", widthPx: 390 });
    await expect(writePicture(io, { svg: "b.svg", theme: "dusk" }, known)).rejects.toThrow(
      "wanted film, night, sun, print",
    );
    await expect(writePicture(io, { svg: "b.svg", width: "10" }, known)).rejects.toThrow("from 320 to 1600");
  });

  it("says why a picture cannot be drawn, and writes none", async () => {
    const io = memoryIo();
    await expect(
      writePicture(io, { svg: "a.svg" }, () => ({ kind: "missing", needs: ["circuits.c1.fuse"] })),
    ).rejects.toThrow("it needs circuits.c1.fuse");
    await expect(
      writePicture(io, { svg: "a.svg" }, () => ({ kind: "refused", code: "chart-empty", because: "wanted a fuse" })),
    ).rejects.toThrow("wanted a fuse [chart-empty]");
    expect(io.files.has("a.svg")).toBe(false);
  });
});

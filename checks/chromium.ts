import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

/** Nothing is fetched, updated or synchronised while a check runs. */
const QUIET = ["--no-sandbox", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

/** Where a Chromium or Chrome usually is, by system. `FUSEBOOK_CHROMIUM` wins. */
const INSTALLED: Readonly<Record<string, readonly string[]>> = {
  linux: ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/snap/bin/chromium"],
  darwin: [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ],
  win32: [
    "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
    "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
    "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
  ],
};

interface Candidate {
  readonly from: string;
  readonly path: () => Promise<string>;
  readonly args: readonly string[];
}

interface Packaged {
  readonly default: { executablePath(): Promise<string>; readonly args: readonly string[] };
}

/** The browsers to try, in order: the one named, the package's own (Linux on x64 only), those installed. */
function candidates(): Candidate[] {
  const named = process.env.FUSEBOOK_CHROMIUM;
  const isPackaged = process.platform === "linux" && process.arch === "x64";
  const load = async () => (await import("@sparticuz/chromium")) as unknown as Packaged;
  return [
    ...(named === undefined ? [] : [{ from: "FUSEBOOK_CHROMIUM", path: async () => named, args: QUIET }]),
    ...(isPackaged
      ? [
          {
            from: "the package @sparticuz/chromium",
            path: async () => (await load()).default.executablePath(),
            args: QUIET,
          },
        ]
      : []),
    ...(INSTALLED[process.platform] ?? [])
      .filter((path) => existsSync(path))
      .map((path) => ({ from: `the one installed at ${path}`, path: async () => path, args: QUIET })),
  ];
}

/** A real Chromium, started: the one place that decides which, and says so. Undefined where none can be started; `tried` says why not. */
export async function startChromium(): Promise<
  | { readonly browser: Browser; readonly used: string }
  | { readonly browser: undefined; readonly tried: readonly string[] }
> {
  const tried: string[] = [];
  for (const { from, path, args } of candidates()) {
    try {
      const browser = await chromium.launch({ executablePath: await path(), args: [...args], headless: true });
      return { browser, used: `Chromium ${browser.version()}, ${from}` };
    } catch (error) {
      tried.push(`${from}: ${error instanceof Error ? error.message.split("\n")[0] : String(error)}`);
    }
  }
  return { browser: undefined, tried };
}

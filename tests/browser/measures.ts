import type { Locator, Page } from "playwright-core";

/** Pairs of labels in the pictures of a page whose texts lie on each other, measured in the page. */
export function overlappingLabels(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    // The box of a line of text is taller than its letters by about this much above and below [px].
    const leading = 2.5;
    const found: string[] = [];
    for (const picture of document.querySelectorAll("svg[data-figure]")) {
      const labels = [...picture.querySelectorAll("[data-label-box]")].map((label) => {
        const boxes = [...label.querySelectorAll("text")].map((text) => text.getBoundingClientRect());
        return {
          text: label.textContent ?? "",
          left: Math.min(...boxes.map((box) => box.left)) + 0.5,
          right: Math.max(...boxes.map((box) => box.right)) - 0.5,
          top: Math.min(...boxes.map((box) => box.top)) + leading,
          bottom: Math.max(...boxes.map((box) => box.bottom)) - leading,
        };
      });
      labels.forEach((a, index) => {
        for (const b of labels.slice(index + 1)) {
          if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) {
            found.push(`${picture.getAttribute("data-figure")}: “${a.text}” and “${b.text}”`);
          }
        }
      });
    }
    return found;
  });
}

/** Labels that stick out of their picture. */
export function cutLabels(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("svg[data-figure]")].flatMap((picture) => {
      const frame = picture.getBoundingClientRect();
      return [...picture.querySelectorAll("text")].flatMap((text) => {
        const box = text.getBoundingClientRect();
        const inside =
          box.left >= frame.left - 1 && box.right <= frame.right + 1 && box.top >= frame.top - 3 && box.bottom <= frame.bottom + 3;
        return inside ? [] : [`${picture.getAttribute("data-figure")}: “${text.textContent}”`];
      });
    }),
  );
}

/** How many drawn paths, lines, marks and cells each picture of the page has. */
export function drawnMarks(page: Page): Promise<readonly number[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("svg[data-figure]")].map(
      (picture) =>
        [...picture.querySelectorAll<SVGGraphicsElement>('path, polyline, polygon, circle, [data-part="cells"] rect')].filter((mark) => {
          const box = mark.getBoundingClientRect();
          return box.width + box.height > 2;
        }).length,
    ),
  );
}

/** Number of different colours in the picture of a part of the page, counted by an empty page beside it. */
export async function colourCount(part: Locator): Promise<number> {
  const png = (await part.screenshot()).toString("base64");
  const blank = await part.page().context().newPage();
  try {
    return await blank.evaluate(async (data) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [image.width, image.height];
      const drawing = canvas.getContext("2d");
      if (!drawing) throw new Error("no canvas");
      drawing.drawImage(image, 0, 0);
      return new Set(new Uint32Array(drawing.getImageData(0, 0, image.width, image.height).data.buffer)).size;
    }, png);
  } finally {
    await blank.close();
  }
}

/** How far the page can be scrolled sideways [px]. */
export function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

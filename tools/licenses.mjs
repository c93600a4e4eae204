// The licence texts of every library that the bundles may carry, as one text: the package hands them on with the code.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const licenceFile = /^(?:licen[cs]e|copying|notice)/i;

/**
 * Every installed package that is not for development only, with its licence texts.
 * @param {string} root folder with package-lock.json and node_modules
 * @returns {{ name: string, version: string, license: string, texts: string[] }[]}
 */
export function shippedLicenses(root) {
  const { packages } = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8"));
  return Object.entries(packages)
    .filter(([path, entry]) => path.includes("node_modules/") && !entry.link && !entry.dev && !entry.devOptional)
    .filter(([path]) => existsSync(join(root, path)))
    .map(([path, { version, license }]) => ({
      name: path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length),
      version,
      license: license ?? "see its text",
      texts: readdirSync(join(root, path))
        .filter((name) => licenceFile.test(name) && !/\.[cm]?[jt]s$/.test(name))
        .map((name) => readFileSync(join(root, path, name), "utf8").trim()),
    }));
}

/** One text of them all. */
export function licensesText(root) {
  const rule = "-".repeat(80);
  const parts = shippedLicenses(root).map(({ name, version, license, texts }) => [`${name} ${version}, ${license}`, ...texts].join("\n\n"));
  return `Libraries that this program carries or needs, with their licences.\n\n${parts.join(`\n\n${rule}\n\n`)}\n`;
}

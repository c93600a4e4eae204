// From the project's BibTeX file to one printed reference for each key.

const entry = /@(\w+)\s*\{\s*([^,\s]+)\s*,([\s\S]*?)\n\}/g;
const field = /(\w+)\s*=\s*\{((?:[^{}]|\{[^{}]*\})*)\}/g;

/**
 * @param {string} bibliography text of a .bib file
 * @returns {Record<string, string>} key → reference as printed
 */
export function references(bibliography) {
  return Object.fromEntries([...bibliography.matchAll(entry)].map(([, , key, body]) => [key, printed(fieldsOf(body))]));
}

function fieldsOf(body) {
  return Object.fromEntries(
    [...body.matchAll(field)].map(([, name, value]) => [
      name.toLowerCase(),
      value.replace(/[{}]/g, "").replaceAll("--", "–").replaceAll("\\&", "&").replace(/\s+/g, " ").trim(),
    ]),
  );
}

function printed({
  author,
  editor,
  title,
  year,
  journal,
  booktitle,
  volume,
  number,
  pages,
  publisher,
  institution,
  organization,
  edition,
  howpublished,
  note,
  doi,
}) {
  const people = author ?? editor ?? institution ?? organization;
  const house = [institution, organization, publisher].find((name) => name !== undefined && name !== people);
  const parts = [
    people?.replaceAll(" and ", "; "),
    title,
    journal ?? booktitle,
    volume && `volume ${volume}`,
    number,
    edition && `${edition} edition`,
    house,
    pages && `pages ${pages}`,
    year,
    howpublished,
    note,
    doi && `doi:${doi}`,
  ];
  return `${parts.filter(Boolean).join(", ")}.`;
}

import { crc32, deflateRawSync } from "node:zlib";

/** A ZIP file of these parts (PKWARE APPNOTE 4.3, no ZIP64), for workbooks that no writer makes. */
export function writeZip(parts: Readonly<Record<string, string | Buffer>>): Buffer {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const [name, content] of Object.entries(parts)) {
    const plain = Buffer.from(content as string);
    const packed = deflateRawSync(plain);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(8, 4);
    common.writeUInt32LE(crc32(plain), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(plain.length, 18);
    common.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from("PK\x03\x04"), common, Buffer.from(name), packed]);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(offset, 10);
    central.push(
      Buffer.concat([Buffer.from("PK\x01\x02\x14\x00"), common, place, Buffer.from(name)]),
    );
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06", "latin1");
  end.writeUInt16LE(central.length, 8);
  end.writeUInt16LE(central.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, directory, end]);
}

/** A workbook (ECMA-376) whose one sheet has this XML within sheetData. */
export function workbookOf(
  title: string,
  sheetData: string,
  more: { workbookPr?: string; strings?: string; styles?: string } = {},
): Buffer {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  return writeZip({
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${relations}">${more.workbookPr ?? ""}<sheets><sheet name="${title}" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${main}"><sheetData>${sheetData}</sheetData></worksheet>`,
    ...(more.strings
      ? { "xl/sharedStrings.xml": `<sst xmlns="${main}">${more.strings}</sst>` }
      : {}),
    ...(more.styles
      ? { "xl/styles.xml": `<styleSheet xmlns="${main}">${more.styles}</styleSheet>` }
      : {}),
  });
}

/** A row of cells written in place. */
export function inlineRow(cells: readonly string[]): string {
  return `<row>${cells.map((cell) => `<c t="inlineStr"><is><t>${cell}</t></is></c>`).join("")}</row>`;
}

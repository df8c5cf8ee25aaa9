import { Document, renderToBuffer } from "@react-pdf/renderer";
import type { ReportDocument } from "@/lib/views/document/document";
import { openFont } from "./font";
import { modifiedAt } from "./modified-at";
import { printableDocument } from "./printable-document";
import { reportSheets } from "./report-sheets";
import { Sheet } from "./sheet";

/**
 * A report as PDF: bookmarks, headers of tables on every page, charts as lines and letters.
 * @param at when it was made; the same document and time give the same bytes.
 */
export async function documentPdf(
  document: ReportDocument,
  at: Date,
): Promise<Uint8Array<ArrayBuffer>> {
  await openFont();
  const report = printableDocument(document);
  const sheets = reportSheets(report);
  const bytes = await renderToBuffer(
    <Document
      title={report.title}
      subject={report.over}
      language={report.language}
      creator={maker}
      producer={maker}
      creationDate={at}
      modificationDate={at}
      pageMode="useOutlines"
      pdfVersion="1.7"
    >
      {sheets.map((sheet, place) => (
        <Sheet
          // biome-ignore lint/suspicious/noArrayIndexKey: sheets keep their order.
          key={place}
          report={report}
          of={sheet}
          page={place + 1}
          pages={sheets.length}
        />
      ))}
    </Document>,
  );
  return modifiedAt(new Uint8Array(bytes));
}

const maker = "Canal Audit";

package cistern.report.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;

/** Puts files into a PDF as PDF/A-3 wants it: named, described, related to the document. */
final class Attachments {

  private static final COSName ASSOCIATED = COSName.getPDFName("AF");
  private static final COSName RELATION = COSName.getPDFName("AFRelationship");

  private Attachments() {}

  static void with(PDDocument document, List<Attachment> attachments) throws IOException {
    if (attachments.isEmpty()) {
      return;
    }
    Map<String, PDComplexFileSpecification> byName = new LinkedHashMap<>();
    COSArray associated = new COSArray();
    for (Attachment attachment : attachments) {
      PDComplexFileSpecification file = file(document, attachment);
      byName.put(attachment.name(), file);
      associated.add(file.getCOSObject());
    }
    PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
    tree.setNames(byName);
    PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
    names.setEmbeddedFiles(tree);
    document.getDocumentCatalog().setNames(names);
    document.getDocumentCatalog().getCOSObject().setItem(ASSOCIATED, associated);
  }

  private static PDComplexFileSpecification file(PDDocument document, Attachment attachment)
      throws IOException {
    byte[] bytes = attachment.content().getBytes(StandardCharsets.UTF_8);
    PDEmbeddedFile embedded = new PDEmbeddedFile(document, new ByteArrayInputStream(bytes));
    embedded.setSubtype(attachment.mediaType());
    embedded.setSize(bytes.length);
    embedded.setModDate(document.getDocumentInformation().getCreationDate());
    PDComplexFileSpecification file = new PDComplexFileSpecification();
    file.setFile(attachment.name());
    file.setFileUnicode(attachment.name());
    file.setFileDescription(attachment.description());
    file.setEmbeddedFile(embedded);
    file.setEmbeddedFileUnicode(embedded);
    file.getCOSObject().setName(RELATION, attachment.relation().word());
    return file;
  }
}

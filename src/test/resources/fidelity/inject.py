"""Makes office.xlsx out of xlsxwriter.xlsx: puts in what no library of the three writes, the way
office programs lay it out: custom XML, threaded comments with their persons, printer settings, custom
views, an outside link, a connection, a slicer, extensions of unknown namespaces, alternate content."""
import os
import zipfile

here = os.path.dirname(os.path.abspath(__file__))
parts = {}
with zipfile.ZipFile(os.path.join(here, "xlsxwriter.xlsx")) as source:
    order = [i.filename for i in source.infolist()]
    for name in order:
        parts[name] = source.read(name)


def edit(name, old, new, count=1):
    text = parts[name].decode("utf-8")
    assert old in text, (name, old, text[:3000])
    parts[name] = text.replace(old, new, count).encode("utf-8")


def add(name, content, kind=None):
    parts[name] = content if isinstance(content, bytes) else content.encode("utf-8")
    if kind:
        edit("[Content_Types].xml", "</Types>", '<Override PartName="/%s" ContentType="%s"/></Types>' % (name, kind))


OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n'


def relate(source, rid, kind, target):
    edit(source, "</Relationships>", '<Relationship Id="%s" Type="%s" Target="%s"/></Relationships>' % (rid, kind, target))


BOOK = "xl/_rels/workbook.xml.rels"
STOCK = "xl/worksheets/_rels/sheet1.xml.rels"
add("customXml/item1.xml", '<notes xmlns="urn:example:angler"><n>keep &amp; read</n></notes>')
add("customXml/itemProps1.xml", HEAD + '<ds:datastoreItem ds:itemID="{5B1D0A33-6F0A-4F6B-9E0C-1B1D2E3F4A5B}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"/>', "application/vnd.openxmlformats-officedocument.customXmlProperties+xml")
add("customXml/_rels/item1.xml.rels", HEAD + '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="%s/customXmlProps" Target="itemProps1.xml"/></Relationships>' % OFFICE)
relate(BOOK, "rIdX1", OFFICE + "/customXml", "../customXml/item1.xml")
add("xl/persons/person.xml", HEAD + '<personList xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><person displayName="the angler" id="{11111111-2222-3333-4444-555555555555}" userId="angler" providerId="None"/></personList>', "application/vnd.ms-excel.person+xml")
relate(BOOK, "rIdX2", "http://schemas.microsoft.com/office/2017/10/relationships/person", "persons/person.xml")
add("xl/threadedComments/threadedComment1.xml", HEAD + '<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><threadedComment ref="A2" dT="2025-04-01T10:00:00.00" personId="{11111111-2222-3333-4444-555555555555}" id="{AAAAAAAA-2222-3333-4444-555555555555}"><text>the best one</text></threadedComment></ThreadedComments>', "application/vnd.ms-excel.threadedcomments+xml")
relate(STOCK, "rIdX3", "http://schemas.microsoft.com/office/2017/10/relationships/threadedComment", "../threadedComments/threadedComment1.xml")
add("xl/printerSettings/printerSettings1.bin", b"\x00\x01printer" * 20)
edit("[Content_Types].xml", "<Default ", '<Default Extension="bin" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.printerSettings"/><Default ')
relate(STOCK, "rIdX4", OFFICE + "/printerSettings", "../printerSettings/printerSettings1.bin")
add("xl/externalLinks/externalLink1.xml", HEAD + '<externalLink xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><externalBook xmlns:r="%s" r:id="rId1"><sheetNames><sheetName val="Old"/></sheetNames></externalBook></externalLink>' % OFFICE, "application/vnd.openxmlformats-officedocument.spreadsheetml.externalLink+xml")
add("xl/externalLinks/_rels/externalLink1.xml.rels", HEAD + '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="%s/externalLinkPath" Target="file:///C:\\angler\\old%%20season.xlsx" TargetMode="External"/></Relationships>' % OFFICE)
relate(BOOK, "rIdX5", OFFICE + "/externalLink", "externalLinks/externalLink1.xml")
add("xl/calcChain.xml", HEAD + '<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="E2" i="1" l="1"/><c r="E3"/><c r="E4" a="1"/></calcChain>', "application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml")
relate(BOOK, "rIdX6", OFFICE + "/calcChain", "calcChain.xml")
add("xl/slicerCaches/slicerCache1.xml", HEAD + '<slicerCacheDefinition xmlns="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main" name="Slicer_Reel" sourceName="Reel"><extLst><x:ext uri="{2F2917AC-EB37-4324-AD4E-5DD8C200BD13}" xmlns:x15="http://schemas.microsoft.com/office/spreadsheetml/2010/11/main"><x15:tableSlicerCache tableId="1" column="1"/></x:ext></extLst></slicerCacheDefinition>', "application/vnd.ms-excel.slicerCache+xml")
relate(BOOK, "rIdX7", "http://schemas.microsoft.com/office/2007/relationships/slicerCache", "slicerCaches/slicerCache1.xml")
add("xl/slicers/slicer1.xml", HEAD + '<slicers xmlns="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><slicer name="Reel" cache="Slicer_Reel" caption="Reel" rowHeight="241300"/></slicers>', "application/vnd.ms-excel.slicer+xml")
relate(STOCK, "rIdX8", "http://schemas.microsoft.com/office/2007/relationships/slicer", "../slicers/slicer1.xml")
add("xl/unheard/of.dat", b"whatever\r\n\x00\xff", "application/x-unheard-of")
relate(BOOK, "rIdX9", "urn:example:unheard", "/xl/unheard/of.dat")
W = "xl/workbook.xml"
edit(W, "<workbookPr ", '<mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice Requires="x15"><x15ac:absPath url="C:\\angler\\" xmlns:x15ac="http://schemas.microsoft.com/office/spreadsheetml/2010/11/ac"/></mc:Choice></mc:AlternateContent><!-- a comment, kept -->\n<workbookPr ')
edit(W, "<workbook ", '<workbook xmlns:x15="http://schemas.microsoft.com/office/spreadsheetml/2010/11/main" xmlns:q="urn:example:odd" q:mark="&lt;kept&gt;" ')
edit(W, "<definedNames>", '<externalReferences><externalReference r:id="rIdX5"/></externalReferences><definedNames>')
edit(W, "</workbook>", '<customWorkbookViews><customWorkbookView name="mine" guid="{6D4B8C1E-0000-4000-8000-000000000001}" includePrintSettings="0" includeHiddenRowCol="0" maximized="1" windowWidth="1000" windowHeight="700" activeSheetId="2"/></customWorkbookViews><extLst><ext uri="{BBE1A952-AA13-448e-AADC-164F8A28A991}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:slicerCaches><x14:slicerCache r:id="rIdX7"/></x14:slicerCaches></ext><ext uri="{00000000-1111-2222-3333-444444444444}" xmlns:odd="urn:example:odd"><odd:thing>kept <odd:b/> too</odd:thing></ext></extLst></workbook>')
S = "xl/worksheets/sheet1.xml"
edit(S, "</worksheet>", "</worksheet>\n<!-- behind the root -->\n")
edit("xl/styles.xml", "</styleSheet>", '<extLst><ext uri="{EB79DEF2-80B8-43e5-95BD-54CBDDF9020C}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:slicerStyles defaultSlicerStyle="SlicerStyleLight1"/></ext></extLst></styleSheet>')

with zipfile.ZipFile(os.path.join(here, "office.xlsx"), "w") as out:
    for n, name in enumerate(parts):
        info = zipfile.ZipInfo(name, (2025, 4, 1, 12, 0, 0))
        info.compress_type = zipfile.ZIP_STORED if n % 5 == 0 else zipfile.ZIP_DEFLATED
        out.writestr(info, parts[name])

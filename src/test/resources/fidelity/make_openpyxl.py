"""Makes openpyxl.xlsx: every feature that openpyxl can write, in its own way of naming and ordering."""
import datetime
import os
import openpyxl
from openpyxl.chart import BarChart, LineChart, Reference
from openpyxl.comments import Comment
from openpyxl.formatting.rule import ColorScaleRule, DataBarRule, FormulaRule, IconSetRule
from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Protection, Side
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.workbook.views import CustomWorkbookView
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.table import Table, TableStyleInfo

here = os.path.dirname(os.path.abspath(__file__))
book = openpyxl.Workbook()
book.epoch = openpyxl.utils.datetime.CALENDAR_MAC_1904
stock = book.active
stock.title = "Stock"
trips = book.create_sheet("Trips")
spares = book.create_sheet("spares")  # the angler's own, and only case keeps it from our name
hidden = book.create_sheet("Prices")
hidden.sheet_state = "veryHidden"
book.create_chartsheet("Picture")
for row in [("Style", "Count", "Weight"), ("jig", 4, 0.5), ("crankbait", 7, 0.375), ("frog", 2, 0.6)]:
    stock.append(row)
house = NamedStyle(name="Angler's own", font=Font(name="Verdana", size=13, italic=True), fill=PatternFill("lightGrid", fgColor="FFAA00"))
book.add_named_style(house)
stock["A1"].style = "Angler's own"
stock["B2"].number_format = '#,##0.0 "pcs"'
stock["C2"].number_format = "# ??/??"
stock["C3"].border = Border(left=Side("double"), diagonal=Side("thin"), diagonalUp=True)
stock["C3"].alignment = Alignment(wrap_text=True, text_rotation=45)
stock["C4"].protection = Protection(locked=False, hidden=True)
stock["E1"] = "=SUM(B2:B4)"  # no cached value
stock["E2"] = "='Buy list'!B5"
stock["E3"] = "=spares!A1"
stock["F1"] = datetime.date(2025, 4, 1)
stock["A2"].comment = Comment("the best one", "the angler", height=80, width=160)
stock["A2"].hyperlink = "https://example.com/a?b=1&c=2"
rule = DataValidation(type="list", formula1='"snag,fish,broken"', allow_blank=True, showErrorMessage=True)
rule.prompt = "one of three"
rule.add("G2:G20")
stock.add_data_validation(rule)
stock.conditional_formatting.add("B2:B4", ColorScaleRule(start_type="min", start_color="FF0000", end_type="max", end_color="00FF00"))
stock.conditional_formatting.add("B2:B4", FormulaRule(formula=["B2<3"], font=Font(color="C00000", bold=True), stopIfTrue=True))
stock.conditional_formatting.add("C2:C4", DataBarRule("num", 0, "num", 1, "638EC6"))
stock.conditional_formatting.add("C2:C4", IconSetRule("3Arrows", "percent", [0, 33, 67]))
table = Table(displayName="Own_1", ref="A1:C4")  # a table name that ours could have
table.tableStyleInfo = TableStyleInfo(name="TableStyleLight9", showRowStripes=True)
stock.add_table(table)
stock.freeze_panes = "B2"
stock.print_title_rows = "1:1"
stock.print_area = "A1:G20"
stock.oddHeader.center.text = "Season &P"
stock.protection.sheet = True
stock.protection.password = "secret"
stock.sheet_properties.tabColor = "1072BA"
stock.row_dimensions[3].hidden = True
stock.column_dimensions.group("H", "J", hidden=True)
trips.append(["Trip", "Date", "Hours"])
for n in range(1, 6):
    trips.append(["T%d" % n, datetime.date(2025, 4, n), 4 + n % 3])
trips.auto_filter.ref = "A1:C6"
trips.auto_filter.add_filter_column(2, ["5", "6"])
trips.merge_cells("E1:F2")
trips["E1"] = "merged"
spares["A1"] = "mine"
book.defined_names.append(DefinedName("Season_total", attr_text="Stock!$E$1"))
book.defined_names.append(DefinedName("Local_hours", localSheetId=1, attr_text="Trips!$C$2:$C$6"))
book.defined_names.append(DefinedName("Local_mine", localSheetId=2, attr_text="spares!$A$1", hidden=True))
for kind, sheet in ((BarChart, stock), (LineChart, trips)):
    chart = kind()
    chart.title = "Counts"
    chart.add_data(Reference(stock, min_col=2, min_row=1, max_row=4), titles_from_data=True)
    sheet.add_chart(chart, "I5")
big = BarChart()
big.add_data(Reference(trips, min_col=3, min_row=1, max_row=6), titles_from_data=True)
book["Picture"].add_chart(big)
book.views[0].activeTab = 1
stock.sheet_view.tabSelected = False
trips.sheet_view.tabSelected = True
book.properties.created = datetime.datetime(2024, 5, 1)
book.properties.modified = datetime.datetime(2024, 5, 1)
book.calculation.fullCalcOnLoad = False
book.calculation.iterate = True
book.save(os.path.join(here, "openpyxl.xlsx"))

#!/bin/sh
# Makes the workbooks of this folder anew. Needs python3 with openpyxl and XlsxWriter, and LibreOffice.
set -e
cd "$(dirname "$0")"
python3 make_xlsxwriter.py
python3 make_openpyxl.py
python3 inject.py
profile=$(mktemp -d)
soffice --headless "-env:UserInstallation=file://$profile" --convert-to xlsx season.fods
mv season.xlsx libreoffice-pivot.xlsx
mkdir -p "$profile/out"
soffice --headless "-env:UserInstallation=file://$profile" --convert-to xlsx --outdir "$profile/out" xlsxwriter.xlsx
mv "$profile/out/xlsxwriter.xlsx" libreoffice-charts.xlsx
rm -rf "$profile"

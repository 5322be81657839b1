#!/usr/bin/env python3
"""Makes reports/demo.png for README out of the demo: front page, loss chart, boat, labels.

From the top of the checkout, after README's first command:  python3 src/test/picture.py
Needs LibreOffice, poppler (pdftoppm, pdftotext) and Python's Pillow.
"""
import re
import subprocess
import tempfile

from PIL import Image, ImageChops

SCALE = 150 / 72  # dots a point
WIDTH, GAP = 1500, 36


def words(pdf):
    """For each page its words, with their upper and lower ends in points."""
    text = subprocess.run(["pdftotext", "-bbox", pdf, "-"], check=True, capture_output=True, text=True).stdout
    word = re.compile(r'yMin="([\d.]+)".*yMax="([\d.]+)">(.*?)</word>')
    return [[(float(a), float(b), w) for a, b, w in word.findall(page)] for page in text.split("<page ")[1:]]


def found(page, phrase):
    """Where a phrase stands on a page: its upper and lower end, or nothing."""
    wanted = phrase.split()
    for i in range(len(page) - len(wanted) + 1):
        if [w for _, _, w in page[i:i + len(wanted)]] == wanted:
            return page[i][:2]
    return None


def cut(pdf, first, last, above=6, below=6):
    """The strip of the first page that has both phrases, from the one to the other, margins off."""
    for number, page in enumerate(words(pdf), 1):
        if found(page, first) and found(page, last):
            break
    else:
        raise SystemExit(f"no page holds '{first}' and '{last}'")
    name = pdf.replace(".pdf", f"{number}")
    subprocess.run(["pdftoppm", "-r", "150", "-png", "-singlefile", "-f", str(number), "-l", str(number), pdf, name],
                   check=True)
    image = Image.open(name + ".png").convert("RGB")
    top, bottom = found(page, first)[0] - above, found(page, last)[1] + below
    image = image.crop((0, round(top * SCALE), image.width, round(bottom * SCALE)))
    return image.crop(ImageChops.difference(image, Image.new("RGB", image.size, "white")).getbbox())


def wide(image, width):
    return image.resize((width, round(image.height * width / image.width)), Image.LANCZOS)


def main():
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["libreoffice", f"-env:UserInstallation=file://{folder}/office", "--headless", "--convert-to",
                        "pdf", "--outdir", folder, "target/demo.xlsx"], check=True, stdout=subprocess.DEVNULL)
        pdf = folder + "/demo.pdf"
        half = (WIDTH - 3 * GAP) // 2
        front = wide(cut(pdf, "What to do now,", "Date of the analysis"), half)
        labels = wide(cut(pdf, "white tape", "green tape", above=3, below=178), half)  # two rows
        chart = wide(cut(pdf, "What you lose of each style,", "Log alone", below=2), half)
        boat = wide(cut(pdf, "The boat from above", "Moves: 1"), half)
        height = max(front.height + labels.height, chart.height + boat.height) + 3 * GAP
        sheet = Image.new("RGB", (WIDTH, height), "white")
        sheet.paste(front, (GAP, GAP))
        sheet.paste(labels, (GAP, height - GAP - labels.height))
        sheet.paste(chart, (2 * GAP + half, GAP))
        sheet.paste(boat, (2 * GAP + half, height - GAP - boat.height))
        sheet.quantize(64, dither=Image.Dither.NONE).save("reports/demo.png", optimize=True)


main()

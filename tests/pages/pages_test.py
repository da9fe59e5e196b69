"""Pages measured and read by other programs: poppler (pdftoppm, pdftotext, pdffonts, pdfinfo), zbar
(zbarimg) and librsvg (rsvg-convert).

    pages_test.py PROGRAM SOURCE WORK [CLASS ...]

What a page must show is taken from `sheet --json` and from this file, never from the page's code.
"""

import csv
import json
import os
import re
import subprocess
import sys
import unittest

PROGRAM, SOURCE, WORK = sys.argv[1:4]
SITE = os.path.join(SOURCE, "data", "demo", "site")
JOBS = ["pump-motor", "flameproof-switch", "dust-lamp"]
PIXELS_A_MM = 10  # at 254 dots to the inch
NEAR = 2  # pixels: 0.2 mm


def job_path(name):
    return os.path.join(SITE, name + ".json")


def call(*args, env=None, stdin=None):
    environment = {**os.environ, "LC_ALL": "C.UTF-8", **(env or {})}
    for name in ("CUTBACK_GLANDS", "CUTBACK_DATA"):
        environment.pop(name, None)
    return subprocess.run(args, env=environment, input=stdin, capture_output=True, check=False)


def cutback(*args, env=None, allowed=(0, 1)):
    done = call(PROGRAM, *args, env=env)
    if done.returncode not in allowed:
        raise AssertionError(f"{args}: exit {done.returncode}: {done.stderr.decode()}")
    return done


def place(name):
    return os.path.join(WORK, name)


def text_of(pdf, *options):
    return call("pdftotext", *options, pdf, "-").stdout.decode()


def pages_of(pdf):
    info = call("pdfinfo", pdf).stdout.decode()
    return int(re.search(r"^Pages: +(\d+)", info, re.M).group(1))


class Raster:
    """One page as rows of grey values, 254 dots to the inch."""

    def __init__(self, pdf, page):
        data = call("pdftoppm", "-r", "254", "-gray", "-f", str(page), "-l", str(page), pdf).stdout
        magic, width, height, most = re.match(rb"(P5)\s+(\d+)\s+(\d+)\s+(\d+)\s", data).groups()
        assert magic == b"P5" and most == b"255"
        self.width, self.height = int(width), int(height)
        start = len(data) - self.width * self.height
        self.rows = [
            data[start + i * self.width : start + (i + 1) * self.width] for i in range(self.height)
        ]

    def runs(self, line):
        """Where a line of pixels is dark: (first, length)."""
        return [
            (found.start(), found.end() - found.start())
            for found in re.finditer(rb"[\x00-\x7f]+", line)
        ]

    def column(self, x):
        return bytes(row[x] for row in self.rows)

    def longest(self, lines):
        return max((length for line in lines for _, length in self.runs(line)), default=0)

    def marks(self, distances):
        """Rows in which thin lines stand at these distances [pixels] and nothing else does."""
        found = 0
        for row in self.rows:
            thin = [(x, length) for x, length in self.runs(row) if length <= 5]
            everything = self.runs(row)
            for x, length in thin:
                middle = x + length / 2
                wanted = [middle + d for d in distances]
                inside = [
                    (a, b)
                    for a, b in everything
                    if a + b > middle - 2 * NEAR and a < wanted[-1] + 2 * NEAR
                ]
                if len(inside) != len(wanted):
                    continue
                if all(
                    abs(a + b / 2 - want) <= NEAR and b <= 5
                    for (a, b), want in zip(inside, wanted)
                ):
                    found += 1
                    break
        return found


def mark_distances(sheet):
    """From the first mark of the drawing to the others, in pixels, by the figures of the sheet."""
    axis = sheet["axis"]
    places = [0.0, axis["bedding_end_mm"]]
    if axis["armour_stop_mm"] is not None:
        tips = -axis["armour_stop_mm"]
        places += [tips, tips - sheet["marks"]["exposed_min_mm"]]
    places.sort()
    return [(x - places[0]) * PIXELS_A_MM for x in places]


def plain(value):
    text = f"{value:.1f}"
    return text[:-2] if text.endswith(".0") else text


def figures_of(sheet):
    """Every figure of a sheet that a person cuts by."""
    marks = sheet["marks"]
    words = [plain(marks[key]) + " mm" for key in ("shoulder_mm", "bedding_cut_mm") if marks[key]]
    words += [plain(marks[key]) + " mm" for key in ("armour_cut_mm", "sheath_cut_mm") if marks[key]]
    if marks["exposed_min_mm"] is not None:
        words.append(f"{plain(marks['exposed_min_mm'])} to {plain(marks['exposed_max_mm'])}")
    words += [
        f"{sheet['depths'][key]:.1f} mm"
        for key in ("sheath_mm", "saw_mm", "saw_limit_mm", "bedding_mm")
        if sheet["depths"][key] is not None
    ]
    for tail in sheet["tails"]:
        words += [plain(tail[key]) for key in ("length_mm", "cut_back_mm", "strip_mm")]
    return words + [sheet["tag"], sheet["end"], sheet["gland"]["part"]]


def overlaps(pdf):
    """Pairs of words that are printed over each other."""
    bad = []
    page = 0
    words = []

    def check():
        for i, (a, ax, ay, aX, aY) in enumerate(words):
            for b, bx, by, bX, bY in words[i + 1 :]:
                wide = min(aX, bX) - max(ax, bx)
                high = min(aY, bY) - max(ay, by)
                # Boxes have the height of the whole line: neighbours touch.
                if wide > 0.5 and high > 0.45 * min(aY - ay, bY - by):
                    bad.append((page, a, b))

    for line in text_of(pdf, "-bbox").splitlines():
        if "<page " in line:
            page += 1
            words = []
        found = re.search(
            r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*)</word>',
            line,
        )
        if found:
            words.append((found.group(5), *map(float, found.groups()[:4])))
        if "</page>" in line:
            check()
    return bad


class Printing(unittest.TestCase):
    def make(self, name, *args, env=None):
        pdf = place(name + ".pdf")
        done = cutback("cards", *args, "--output", pdf, "--json", env=env)
        return pdf, json.loads(done.stdout)

    def check_bars(self, pdf, page, across=1, down=1):
        """On every card of the page, at its foot and on its left."""
        raster = Raster(pdf, page)
        wide, high = raster.width // across, raster.height // down
        for row in range(down):
            for column in range(across):
                x, y = column * wide, row * high
                below = [line[x : x + wide] for line in raster.rows[y + high - 100 : y + high - 20]]
                left = [raster.column(x + i)[y : y + high] for i in range(30, 90)]
                inside = [line[x + 20 : x + wide - 20] for line in raster.rows[y + 20 : y + high - 20]]
                if (row, column) != (0, 0) and raster.longest(inside) == 0:
                    continue  # the last page may have room for more cards
                self.assertLessEqual(abs(raster.longest(below) - 500), NEAR, "bar along")
                self.assertLessEqual(abs(raster.longest(left) - 500), NEAR, "bar across")
        return raster

    def check_words(self, wanted, words):
        """Without the text itself, which fills screens."""
        for one in wanted:
            self.assertTrue(one in words, f"{one!r} is not printed")


class Cards(Printing):
    def test_true_scale_on_every_paper(self):
        for paper, each, way, across, down in [
            ("a4", "1", [], 1, 1),
            ("a4", "2", [], 1, 2),
            ("A4", "4", [], 2, 2),
            ("A4", "4", ["--landscape"], 2, 2),
            ("a4", "2", ["--landscape"], 2, 1),
            ("a5", "1", [], 1, 1),
            ("a5", "1", ["--landscape"], 1, 1),
            ("a6", "1", [], 1, 1),
            ("a6", "1", ["--landscape"], 1, 1),
            ("letter", "2", [], 1, 2),
        ]:
            with self.subTest(paper=paper, each=each, way=way):
                job = job_path("pump-motor")
                sheet = json.loads(cutback("sheet", job, "--json").stdout)
                jobs = [job_path(name) for name in ("pump-motor", "flameproof-switch", "pump-motor", "dust-lamp")]
                pdf, count = self.make("scale", *jobs, "--paper", paper, "--per-page", each, *way)
                first = count["contents_pages"] + 1
                for page in range(first, pages_of(pdf) + 1):
                    raster = self.check_bars(pdf, page, across, down)
                    if page == first:
                        self.assertGreater(raster.marks(mark_distances(sheet)), 10)
                self.assertEqual(overlaps(pdf), [])

    def test_marks_of_every_kind_of_end(self):
        for name in JOBS:
            with self.subTest(name):
                sheet = json.loads(cutback("sheet", job_path(name), "--json").stdout)
                pdf, _ = self.make(name, job_path(name))
                self.assertGreater(Raster(pdf, 1).marks(mark_distances(sheet)), 10)

    def test_text_fonts_and_code(self):
        for name in JOBS:
            for paper in ("a4", "a6"):
                with self.subTest(name, paper=paper):
                    sheet = json.loads(cutback("sheet", job_path(name), "--json").stdout)
                    pdf, count = self.make(name, job_path(name), "--paper", paper)
                    self.assertEqual(count["ends"], 1)
                    self.assertEqual(count["pages"], pages_of(pdf))
                    words = " ".join(text_of(pdf, "-raw").split())
                    self.check_words(figures_of(sheet), words)
                    fonts = call("pdffonts", pdf).stdout.decode().splitlines()[2:]
                    self.assertGreater(len(fonts), 0)
                    for font in fonts:  # ... emb sub uni object ID
                        self.assertRegex(font, r" yes +(yes|no) +(yes|no) +\d+ +\d+$")
                    self.check_code(pdf, name, sheet)

    def check_code(self, pdf, name, sheet):
        picture = place("code")
        call("pdftoppm", "-r", "300", "-png", "-f", "1", "-l", "1", "-singlefile", pdf, picture)
        # Other codes are looked for as well unless told: lines of a drawing can pass for a bar code.
        code = call("zbarimg", "-q", "--raw", "-Sdisable", "-Sqrcode.enable", picture + ".png").stdout.decode()
        want = cutback("sheet", job_path(name), "--qr-text").stdout.decode()
        self.assertEqual(code.strip(), want.strip())
        again = place("again.json")
        with open(again, "w", encoding="utf-8") as file:
            file.write(code)
        self.assert_same_sheet(again, sheet)
        # And from standard input, as a scanner would give it.
        done = call(PROGRAM, "sheet", "-", "--json", stdin=code.encode())
        self.assertEqual(done.returncode, 0, done.stderr)

    def assert_same_sheet(self, job, want):
        """All but why the gland was chosen and what is assumed: the code says both."""
        got = json.loads(cutback("sheet", job, "--json").stdout)
        for one in (got, want):
            one["gland"].pop("because")
            one.pop("assumptions")
        self.assertEqual(got, want)

    def test_chosen_gland_is_in_the_code(self):
        options = ["--gland", "BARRIER-16-M20"]
        job = job_path("pump-motor")
        again = place("named.json")
        with open(again, "wb") as file:
            file.write(cutback("sheet", job, *options, "--qr-text").stdout)
        sheet = json.loads(cutback("sheet", again, "--json").stdout)
        self.assertEqual(sheet["gland"]["part"], "BARRIER-16-M20")
        pdf, _ = self.make("named", again)
        self.check_words(["BARRIER-16-M20"], text_of(pdf, "-raw"))

    def test_lengths_from_mark_to_mark(self):
        """In the order of the drawing, also where the bedding ends in front of the shoulder."""
        for name in JOBS:
            with self.subTest(name):
                sheet = json.loads(cutback("sheet", job_path(name), "--json").stdout)
                places = mark_distances(sheet)
                chain = [f"{plain((b - a) / PIXELS_A_MM)} mm" for a, b in zip(places, places[1:])]
                if sheet["marks"]["exposed_min_mm"] is not None:
                    marks = sheet["marks"]
                    chain[0] = f"{plain(marks['exposed_min_mm'])} to {plain(marks['exposed_max_mm'])} mm"
                pdf, _ = self.make(name, job_path(name))
                line = next(line for line in text_of(pdf, "-layout").splitlines() if chain[0] in line)
                words = " ".join(line.split())
                self.assertTrue(" ".join(chain) in words, f"{chain} is not in {words!r}")

    def test_a_full_disk_is_an_error(self):
        for args in (["cards", job_path("pump-motor")], ["sheet", job_path("pump-motor"), "--pdf"]):
            with open("/dev/full", "wb") as full:
                done = subprocess.run([PROGRAM, *args], stdout=full, stderr=subprocess.PIPE, check=False)
            self.assertEqual(done.returncode, 3)
            self.assertIn(b"stdout", done.stderr)

    def test_every_card_that_goes_on_says_whose_it_is(self):
        job = job_path("dust-lamp")
        sheet = json.loads(cutback("sheet", job, "--json").stdout)
        pdf, count = self.make("going_on", job, "--paper", "a6")
        self.assertEqual(count["cards"], 2)
        for page in (1, 2):
            words = text_of(pdf, "-raw", "-f", str(page), "-l", str(page))
            self.check_words([sheet["tag"], sheet["end"], sheet["gland"]["part"],
                              f"card {page} of 2", sheet["state"].upper() if sheet["state"] != "cut" else sheet["tag"]], words)

    def test_options_in_the_code_are_measured(self):
        options = "--od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 --entry M20 --reach 90 --wall 2".split()
        again = place("options.json")
        with open(again, "wb") as file:
            file.write(cutback("sheet", *options, "--qr-text").stdout)
        want = json.loads(cutback("sheet", *options, "--json").stdout)
        self.assert_same_sheet(again, want)

    def test_same_bytes_and_no_date(self):
        jobs = [job_path(name) for name in JOBS]
        first, _ = self.make("first", *jobs)
        second, _ = self.make("second", *jobs, env={"TZ": "Asia/Tokyo", "SOURCE_DATE_EPOCH": "7"})
        with open(first, "rb") as one, open(second, "rb") as other:
            content = one.read()
            self.assertEqual(content, other.read())
        self.assertNotIn(b"Date", content)
        self.assertIn(b"/PrintScaling /None", content)
        epoch = {"SOURCE_DATE_EPOCH": "1764115200"}  # 2025-11-26 00:00 UTC
        dated, _ = self.make("dated", *jobs, "--dated", env=epoch)
        with open(dated, "rb") as file:
            self.assertIn(b"/CreationDate (D:20251126000000Z)", file.read())
        self.assertIn("2025-11-26", text_of(dated))
        done = cutback("cards", *jobs, "--dated", env={"SOURCE_DATE_EPOCH": "x"}, allowed=(2,))
        self.assertIn(b"SOURCE_DATE_EPOCH", done.stderr)


HEADINGS = (
    "tag from to cores csa_mm2 insulation armour sheath_od_mm bedding_mm armour_mm evidence "
    "entry hole wall_mm material reach_mm strip_mm"
).split()
USUAL = dict(
    zip(
        HEADINGS,
        "x MCC-1 pump 3 4 xlpe wire 15.3+15.1 10.6+10.7 0.9 measured M20 clearance 2.5 steel 180 10".split(),
    )
)


def schedule(name, rows):
    path = place(name)
    with open(path, "w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, HEADINGS)
        writer.writeheader()
        for row in rows:
            writer.writerow({**USUAL, **row})
    return path


class Schedules(Printing):
    HOSTILE = [
        {"tag": "T" * 200},
        {"tag": "كابل المضخة رقم ٧"},
        {"tag": "Αντλία-Ω 12", "from": "very long place name " * 30},
        {"tag": "\U0001f600 \u6f22\u5b57"},
        {"tag": "A\tB\u202eC\u0007"},
        {"tag": "NONE-1", "sheath_od_mm": "80", "bedding_mm": "70", "evidence": "datasheet"},
        {"tag": "BAD-1", "sheath_od_mm": "9.3+9.2"},
        {"tag": "MANY-1", "cores": "61", "sheath_od_mm": "62+62", "bedding_mm": "53+53"},
    ]

    def test_hostile_ends_all_have_a_card(self):
        path = schedule("hostile.csv", self.HOSTILE)
        for paper, each, way in [("a4", "1", []), ("a4", "2", []), ("a4", "4", []), ("a6", "1", []),
                                 ("a6", "1", ["--landscape"]), ("letter", "4", ["--landscape"])]:
            with self.subTest(paper=paper, each=each, way=way):
                pdf, count = self.make("hostile", path, "--paper", paper, "--per-page", each, *way)
                self.assertEqual(count["ends"], 2 * len(self.HOSTILE))
                self.assertGreaterEqual(count["cards"], count["ends"])
                self.assertEqual(count["unusable"], 2)
                self.assertGreaterEqual(count["without_gland"], 2)
                self.assertEqual(count["pages"] + count["contents_pages"], pages_of(pdf))
                self.assertEqual(overlaps(pdf), [])
                words = " ".join(text_of(pdf, "-raw").split())
                self.check_words(("NONE-1", "BAD-1", "MANY-1", "Αντλία-Ω 12", "NO GLAND FITS",
                                  "THIS END CANNOT BE USED"), words)
                self.assertNotIn("\u202e", words)

    def tags(self, pdf, first=1):
        """The tag of each page: its first word."""
        return [
            text_of(pdf, "-f", str(page), "-l", str(page)).split()[0]
            for page in range(first, pages_of(pdf) + 1)
        ]

    def test_order_choice_and_contents(self):
        names = ["P-10", "P-2", "P-1", "P-30", "P-7", "P-8"]
        path = schedule("order.csv", [{"tag": name} for name in names])
        pdf, count = self.make("given", path)
        self.assertEqual(count["contents_pages"], 1)  # twelve cards
        self.assertEqual(self.tags(pdf, 2), [name for name in names for _ in "ab"])
        contents = text_of(pdf, "-f", "1", "-l", "1", "-layout")
        for i, name in enumerate(names):
            self.assertRegex(contents, rf"{name} +from: MCC-1 +\S+ +{2 * i + 1}\n")
        pdf, _ = self.make("sorted", path, "--sort", "tag")
        self.assertEqual(
            self.tags(pdf, 2), [n for n in ["P-1", "P-2", "P-7", "P-8", "P-10", "P-30"] for _ in "ab"]
        )
        pdf, count = self.make("only", path, "--only", "P-7", "--only", "P-2")
        self.assertEqual(self.tags(pdf), ["P-2", "P-2", "P-7", "P-7"])
        self.assertEqual(count["contents_pages"], 0)
        pdf, _ = self.make("places", path, "--sort", "end", "--only", "P-7", "--only", "P-2")
        self.assertEqual(self.tags(pdf), ["P-2", "P-7", "P-2", "P-7"])
        for tag, gland in [("J-1", "OUTER-16-M20"), ("J-2", "ARM-16-M20")]:
            with open(job_path("pump-motor"), encoding="utf-8") as file:
                job = json.load(file)
            with open(place(tag + ".json"), "w", encoding="utf-8") as file:
                json.dump({**job, "tag": tag, "gland": gland}, file)
        pdf, _ = self.make("glands", place("J-1.json"), place("J-2.json"), "--sort", "gland")
        self.assertEqual(self.tags(pdf), ["J-2", "J-1"])
        done = cutback("cards", path, "--only", "P-99", "--output", place("none.pdf"), allowed=(2,))
        self.assertIn(b"P-99", done.stderr)
        self.assertFalse(os.path.exists(place("none.pdf")))

    def test_cards_of_results(self):
        path = schedule("results_of.csv", [{"tag": "P-1"}, {"tag": "P-2"}])
        results = place("results.csv")
        cutback("schedule", path, "--output", results, "--quiet")
        with open(results, encoding="utf-8", newline="") as file:
            rows = list(csv.reader(file))
        part = rows[0].index("part")
        chosen = rows[1][part]
        rows[1][part] = "ARM-16-M20"  # a person prefers it here
        self.assertNotEqual(chosen, "ARM-16-M20")
        own = cutback("cards", path, "--results", results, "--output", place("own.pdf"))
        self.assertNotIn(b"cut elsewhere", own.stderr)
        with open(results, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows(rows)
        other = cutback("cards", path, "--results", results, "--output", place("own.pdf"))
        self.assertIn(b"1 end is cut elsewhere in the results", other.stderr)
        pdf, count = self.make("chosen", path, "--results", results)
        pages = [text_of(pdf, "-f", str(i), "-l", str(i)) for i in range(1, 5)]
        self.assertIn("ARM-16-M20", pages[0])
        for page in pages[1:]:
            self.assertIn(chosen, page)
        self.assertEqual(count["fitting"], 4)
        for rows_left, words in [(rows[:-1], b"fewer"), (rows + rows[1:2], b"more"),
                                 (rows[:1] + rows[2:], b"another order")]:
            with open(results, "w", encoding="utf-8", newline="") as file:
                csv.writer(file).writerows(rows_left)
            done = cutback("cards", path, "--results", results, "--output", place("no.pdf"), allowed=(2,))
            self.assertIn(words, done.stderr)
            self.assertFalse(os.path.exists(place("no.pdf")))

    def test_many_pages(self):
        """More pages than are kept at a time, and contents of several pages."""
        names = [f"K-{i:03}" for i in range(70)]
        path = schedule("many.csv", [{"tag": name} for name in names])
        pdf, count = self.make("many", path)
        self.assertEqual(count["pages"], 140)
        self.assertEqual(pages_of(pdf), 140 + count["contents_pages"])
        self.assertGreater(count["contents_pages"], 1)
        first = count["contents_pages"] + 1
        self.assertEqual(self.tags(pdf, first), [name for name in names for _ in "ab"])
        for page in (first, first + 31, first + 32, first + 139):
            self.check_bars(pdf, page)


class Sheets(Printing):
    def test_sheet_as_pages(self):
        for name in JOBS:
            with self.subTest(name):
                job = job_path(name)
                pdf = place("sheet.pdf")
                cutback("sheet", job, "--pdf", "--output", pdf)
                self.assertLessEqual(pages_of(pdf), 2)
                sheet = json.loads(cutback("sheet", job, "--json").stdout)
                words = " ".join(text_of(pdf, "-raw").split())
                self.check_words(figures_of(sheet), words)
                whole = [item["text"] for item in sheet["steps"] + sheet["inspection"]]
                whole += [check["says"] for check in sheet["checks"]]
                whole += sheet["cautions"] + sheet["sources"] + sheet["remarks"]
                # Where a line ends is no matter, and pdftotext joins words at their hyphens.
                squeeze = lambda text: text.replace(" ", "").replace("-", "")
                self.check_words([squeeze(text) for text in whole], squeeze(words))
                raster = Raster(pdf, 1)
                self.assertGreater(raster.marks(mark_distances(sheet)), 10)
                self.assertLessEqual(abs(raster.longest(raster.rows[-120:]) - 500), NEAR)
                self.assertEqual(overlaps(pdf), [])

    def test_drawing_as_svg(self):
        for name in JOBS:
            with self.subTest(name):
                job = job_path(name)
                svg = place(name + ".svg")
                cutback("sheet", job, "--svg", "--output", svg)
                pdf = place("svg.pdf")
                done = call("rsvg-convert", "-f", "pdf", "-o", pdf, svg)
                self.assertEqual(done.returncode, 0, done.stderr)
                sheet = json.loads(cutback("sheet", job, "--json").stdout)
                raster = Raster(pdf, 1)
                self.assertGreater(raster.marks(mark_distances(sheet)), 10)
                self.assertLessEqual(abs(raster.longest(raster.rows[-160:]) - 500), NEAR)
                with open(svg, encoding="utf-8") as file:
                    content = file.read()
                self.assertIn(sheet["tag"], content)
                colours = re.findall(r"rgb\(([\d.]+)%,([\d.]+)%,([\d.]+)%\)", content)
                self.assertGreater(len(colours), 3)
                for red, green, blue in colours:  # legible without colour: there is none
                    self.assertTrue(red == green == blue)


if __name__ == "__main__":
    os.makedirs(WORK, exist_ok=True)
    unittest.main(argv=sys.argv[:1] + sys.argv[4:])

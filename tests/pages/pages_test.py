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

    def ticks(self, distances):
        """Rows in which thin lines stand at these distances [pixels] and nothing else does."""
        found = 0
        for row in self.rows:
            runs = self.runs(row)
            if len(runs) != len(distances) or any(length > 5 for _, length in runs):
                continue
            middles = [x + length / 2 for x, length in runs]
            if all(abs(x - middles[0] - d) <= NEAR for x, d in zip(middles, distances)):
                found += 1
        return found

    def part(self, x, y, width, height):
        """A part of the page, in pixels."""
        part = object.__new__(Raster)
        part.width, part.height = width, height
        part.rows = [row[x : x + width] for row in self.rows[y : y + height]]
        return part


def mark_distances(sheet):
    """From the first mark of the cuts to the others, in pixels, by the figures of the sheet."""
    axis = sheet["axis"]
    places = [axis["bedding_end_mm"]]
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
    words = [plain(marks[key]) + " from the end" for key in ("bedding_cut_mm", "armour_cut_mm") if marks[key]]
    if marks["exposed_min_mm"] is not None:
        words.append(f"{plain(marks['exposed_min_mm'])} to {plain(marks['exposed_max_mm'])} behind mark 1")
    elif marks["sheath_cut_mm"]:
        words.append(plain(marks["sheath_cut_mm"]) + " from the end")
    words += [
        f"{sheet['depths'][key]:.1f}"
        for key in ("sheath_mm", "saw_mm", "saw_limit_mm", "bedding_mm")
        if sheet["depths"][key] is not None
    ]
    for tail in sheet["tails"]:
        words += [plain(tail[key]) for key in ("length_mm", "cut_back_mm", "strip_mm")]
    return words + [sheet["tag"], sheet["end"], sheet["gland"]["part"]]


class Word:
    """A word as it stands on a page; lengths in points."""

    def __init__(self, page, text, x, y, right, bottom):
        self.page, self.text = page, text
        self.x, self.y, self.right, self.bottom = x, y, right, bottom

    @property
    def size(self):
        """Of the type: the faces here are 1.164 times as high as their size. In the left margin
        words run upwards."""
        upwards = self.x < 30 and self.bottom - self.y > self.right - self.x or self.right < 27
        return (self.right - self.x if upwards else self.bottom - self.y) / 1.164


def words_of(pdf):
    page = 0
    words = []
    for line in text_of(pdf, "-bbox").splitlines():
        page += "<page " in line
        found = re.search(
            r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*)</word>',
            line,
        )
        if found:
            x, y, right, bottom = map(float, found.groups()[:4])
            words.append(Word(page, found.group(5), x, y, right, bottom))
    return words


def overlaps(pdf):
    """Pairs of words that are printed over each other."""
    bad = []
    words = words_of(pdf)
    for i, a in enumerate(words):
        for b in words[i + 1 :]:
            if a.page != b.page:
                break
            wide = min(a.right, b.right) - max(a.x, b.x)
            high = min(a.bottom, b.bottom) - max(a.y, b.y)
            # Boxes have the height of the whole line: neighbours touch.
            if wide > 0.5 and high > 0.45 * min(a.bottom - a.y, b.bottom - b.y):
                bad.append((a.page, a.text, b.text))
    return bad


class Printing(unittest.TestCase):
    def make(self, name, *args, env=None):
        pdf = place(name + ".pdf")
        done = cutback("cards", *args, "--output", pdf, "--json", env=env)
        return pdf, json.loads(done.stdout)

    def check_bars(self, pdf, page, across=1, down=1):
        """On every card of the page, along its upper edge and down its left one."""
        raster = Raster(pdf, page)
        wide, high = raster.width // across, raster.height // down
        for row in range(down):
            for column in range(across):
                part = raster.part(column * wide, row * high, wide, high)
                inside = part.part(20, 20, wide - 40, high - 40)
                if (row, column) != (0, 0) and inside.longest(inside.rows) == 0:
                    continue  # the last page may have room for more cards
                self.assertLessEqual(abs(part.longest(part.rows[30:60]) - 500), NEAR, "bar along")
                left = [part.column(x) for x in range(30, 90)]
                self.assertLessEqual(abs(part.longest(left) - 500), NEAR, "bar across")
        return raster

    def last_rows(self, raster, across=1, down=1):
        """The last four millimetres of each card, where a cable lies beside the paper."""
        wide, high = raster.width // across, raster.height // down
        for row in range(down):
            for column in range(across):
                yield raster.part(column * wide + 10, (row + 1) * high - 42, wide - 20, 35)

    def check_words(self, wanted, words):
        """Without the text itself, which fills screens."""
        for one in wanted:
            self.assertTrue(one in words, f"{one!r} is not printed")


class Cards(Printing):
    PAPERS = [
        ("a4", [], 1, 2),
        ("A4", ["--per-page", "1"], 1, 1),
        ("A4", ["--per-page", "4"], 2, 2),
        ("a5", [], 1, 1),
        ("a6", [], 1, 1),
        ("letter", [], 1, 2),
        ("letter", ["--per-page", "1"], 1, 1),
        ("letter", ["--per-page", "4"], 2, 2),
    ]

    def test_true_scale_on_every_paper(self):
        """Ticks of true size run to the edge, on the front or on the back."""
        job = job_path("pump-motor")
        sheet = json.loads(cutback("sheet", job, "--json").stdout)
        again = self.variant("scale_again", lambda job: job.update(tag="P-202"))
        jobs = [job, job_path("flameproof-switch"), again, job_path("dust-lamp")]
        for paper, each, across, down in self.PAPERS:
            with self.subTest(paper=paper, each=each):
                pdf, count = self.make("scale", *jobs, "--paper", paper, *each)
                first = count["contents_pages"] + 1
                found = 0
                for page in range(first, pages_of(pdf) + 1):
                    if "50 mm" not in text_of(pdf, "-f", str(page), "-l", str(page)):
                        continue
                    raster = self.check_bars(pdf, page, across, down)
                    for rows in self.last_rows(raster, across, down):
                        found += rows.ticks(mark_distances(sheet)) >= 30
                self.assertEqual(found, 2)
                self.assertEqual(overlaps(pdf), [])

    def test_marks_of_every_kind_of_end(self):
        for name in JOBS:
            with self.subTest(name):
                sheet = json.loads(cutback("sheet", job_path(name), "--json").stdout)
                pdf, _ = self.make(name, job_path(name))
                self.assertGreaterEqual(
                    next(self.last_rows(Raster(pdf, 1))).ticks(mark_distances(sheet)), 30
                )

    def variant(self, name, change, base="pump-motor"):
        with open(job_path(base), encoding="utf-8") as file:
            job = json.load(file)
        change(job)
        path = place(name + ".json")
        with open(path, "w", encoding="utf-8") as file:
            json.dump(job, file, ensure_ascii=False)
        return path

    def test_type_has_its_size_by_what_it_is_for(self):
        """Largest and smallest by role, on the large paper and the small one [points]."""
        for paper, tag, end, gland, mark, hand in [("a5", 28, 16, 24, 24, 12), ("letter", 28, 16, 24, 24, 12),
                                                   ("a6", 20, 13, 16, 18, 10)]:
            with self.subTest(paper):
                pdf, _ = self.make("type", job_path("pump-motor"), "--paper", paper)
                words = words_of(pdf)
                size = lambda text: max(word.size for word in words if word.text.lower() == text.lower())
                for text, want in [("P-201", tag), ("motor", end), ("ARM-16-M20", gland), ("280", mark),
                                   ("236", mark), ("13.5", mark)]:
                    self.assertAlmostEqual(size(text), want, delta=0.3, msg=text)
                for text in ["read,", "16.5", "REAR", "armour", "from", "saw", "1.7", "214", "22",
                             "torque", "insulation,", "checked", "M20,", "spanner"]:
                    self.assertGreaterEqual(size(text), hand - 0.3, text)
                self.assertGreaterEqual(min(word.size for word in words), 6.9)

    def ten_jobs(self):
        """(name, job, gland list): every kind of end that a card has words of its own for."""
        def plain_place(job):
            job.pop("area"), job.pop("fault")
        def with_change(name, change, base="pump-motor"):
            return self.variant("ten_" + name, lambda job: (base == "pump-motor" and plain_place(job), change(job)), base)
        def cores_61(job):
            job["cable"].update(cores=61, csa_mm2=1.5, sheath_od_mm="35.0+35.2", bedding_mm="29.3+29.1", armour_mm="1.6")
            job["entry"].update(entry="M40")
            job.update(tag="MANY-61", tails={"slack_mm": 40, "strip_mm": 8, "cores": [
                {"core": f"X1:{i + 1}", "reach_mm": 200 + 5 * i} for i in range(61)]})
        def cable_90(job):
            job["cable"].update(sheath_od_mm="89.5+89.9", bedding_mm="76.4+76.6", armour_mm="3.15")
            job["cable"].pop("csa_mm2"), job["cable"].pop("insulation")
            job["entry"].update(entry="M110", washer_mm=3, locknut_mm=10)
            job.update(tag="F-900", tails={"slack_mm": 80, "strip_mm": 40, "reach_mm": 700})
        def braid(job):
            job["cable"].update(armour="braid", sheath_od_mm="14.2+14.3", bedding_mm="10.0+10.1", armour_mm="0.3")
            job["cable"].pop("insulation")
        def adaptor(job):
            job["entry"].update(entry="M25", adaptor="M25:M20", adaptor_mm=12, adaptor_thread_mm=15,
                                adaptor_bore_mm=18, adaptor_material="brass")
            job.update(gland="ARM-16-M20")
        def no_fit(job):
            job["cable"].update(sheath_od_mm="80+80", bedding_mm="70+70", armour_mm="3.15")
            job["cable"].pop("csa_mm2"), job["cable"].pop("insulation")
        with open(os.path.join(SOURCE, "data", "demo", "glands.csv"), encoding="utf-8") as file:
            rows = list(csv.DictReader(file))
        large = {**next(row for row in rows if row["part"] == "ARM-75-M75"), "part": "ARM-95-M110",
                 "entry_thread": "M110", "entry_length_mm": "22", "outer_min_mm": "80", "outer_max_mm": "95",
                 "inner_min_mm": "70", "inner_max_mm": "84", "bore_mm": "85", "armour_max_mm": "4",
                 "armour_stop_mm": "48"}
        for name, some in [("no_stop", [{**row, "armour_stop_mm": ""} for row in rows]), ("large", rows + [large])]:
            with open(place(f"ten_{name}.csv"), "w", encoding="utf-8", newline="") as file:
                writer = csv.DictWriter(file, list(rows[0]))
                writer.writeheader()
                writer.writerows(some)
        tails = {"slack_mm": 40, "strip_mm": 10}
        return [
            ("plain", with_change("plain", lambda job: None), None),
            ("barrier", job_path("flameproof-switch"), None),
            ("barrier with a code", with_change("coded", lambda job: job.update(gland="BARRIER-16-M20")), None),
            ("unarmoured", job_path("dust-lamp"), None),
            ("braid", with_change("braid", braid), None),
            ("adaptor", with_change("adaptor", adaptor), None),
            ("no stop", with_change("plain", lambda job: None), place("ten_no_stop.csv")),
            ("no route", with_change("no_route", lambda job: job.update(tails=tails)), None),
            ("no fit", with_change("no_fit", no_fit), None),
            ("61 cores", with_change("cores", cores_61), None),
            ("90 mm", with_change("large", cable_90), place("ten_large.csv")),
        ]

    def test_ten_jobs_on_every_paper(self):
        """One sheet of paper each, marks on the first side, nothing over another thing, no small
        type, and nobody signs on a side that shows nothing else of the work."""
        for name, job, glands in self.ten_jobs():
            options = ["--glands", glands] if glands else []
            sheet = json.loads(cutback("sheet", job, "--json", *options).stdout)
            for paper, most in [("a5", 1), ("a6", 2), ("a4", 1), ("letter", 1)]:
                with self.subTest(name, paper=paper):
                    pdf, count = self.make("ten", job, "--paper", paper, *options)
                    self.assertEqual(overlaps(pdf), [])
                    words = words_of(pdf)
                    self.assertGreaterEqual(min(word.size for word in words), 6.9)
                    self.assertEqual(count["over_a_sheet"], 0)
                    self.assertLessEqual(pages_of(pdf), max(most, 2) if name == "61 cores" else most)
                    if sheet["state"] not in ("cut", "measure"):
                        continue
                    front = " ".join(text_of(pdf, "-raw", "-f", "1", "-l", "1").split())
                    if paper in ("a4", "letter"):
                        front = front.split("side 2")[0]
                    self.check_words(["AND READ, mm" if "BARE" in front else "BEFORE CUTTING", "REAR PARTS", "CUT WHERE, mm", "WORK DEAD"], front)
                    cuts = ["sheath"] if name == "unarmoured" else ["1 armour", "2 sheath", "3 bedding"]
                    self.check_words(cuts, front)
                    # What to beware of is read before anything is cut, on whatever paper.
                    cautions = {"barrier": ["Saw no deeper", "Flameproof:", "Open nothing that is live."],
                                "braid": ["At mark 1 cut round the sheath, strip it to the end, then cut the armour."],
                                "unarmoured": [], "90 mm": [], "61 cores": []}.get(name, ["Saw no deeper"])
                    if paper != "a6":  # of which the last ones are on the back
                        cautions += {"unarmoured": [], "90 mm": [], "barrier": []}.get(name, ["Eyes: cut wires spring."])
                    self.check_words(cautions, front)
                    gate = 10 if paper == "a6" else 12
                    for word in words:
                        if word.text in ("REAR", "armour,", "torque", "checked", "spanner", "must", "score"):
                            self.assertGreaterEqual(word.size, gate - 0.3, word.text)
                    for page in range(1, pages_of(pdf) + 1):
                        side = text_of(pdf, "-raw", "-f", str(page), "-l", str(page))
                        if "checked by" in side:
                            self.assertRegex(side, "LENGTH|TAIL|CUT WHERE|TRUE SIZE|SKETCH", page)

    def test_the_card_on_a_sheet_holds_its_marks(self):
        """However much is missing, the rows of the marks stand above the fold, nothing over another."""
        job = self.variant("much", lambda job: ([job["entry"].pop(key) for key in ("wall_mm", "hole", "material")],
                                                job.update(tails={"slack_mm": 40})), "flameproof-switch")
        pdf = place("much_sheet.pdf")
        cutback("sheet", job, "--pdf", "--output", pdf)
        self.assertEqual(overlaps(pdf), [])
        front = " ".join(text_of(pdf, "-raw", "-f", "1", "-l", "1").split())
        self.check_words(["3 bedding", "Certificate, instructions"], front)

    def test_nothing_falls_off_a_card(self):
        """Whatever is missing of an end, however long its name: every row of the marks with its depth,
        the caution of every card and what is signed stand inside the card, nothing over another."""
        missing = [("wall_mm",), ("hole",), ("material",), ("hole", "material"), ("wall_mm", "hole", "material")]
        jobs = []
        for base in ("pump-motor", "flameproof-switch", "dust-lamp"):
            for i, keys in enumerate(missing):
                for tails in (None, {"slack_mm": 40}):
                    tag = f"{base[0].upper()}-{len(jobs)}" + ("-BEHIND-THE-PUMP-HOUSE" if i % 2 else "")
                    jobs.append(self.variant(f"off_{len(jobs)}", lambda job: (
                        [job["entry"].pop(key, None) for key in keys], job.update(tag=tag),
                        tails and job.update(tails=tails)), base))
        for paper, across, down in [("a5", 1, 1), ("a6", 1, 1), ("a4", 1, 2), ("letter", 1, 2)]:
            with self.subTest(paper=paper):
                pdf, count = self.make("off", *jobs, "--paper", paper)
                self.assertEqual(overlaps(pdf), [])
                width, height = map(float, re.search(r"Page size: +([\d.]+) x ([\d.]+)", call("pdfinfo", pdf).stdout.decode()).groups())
                cards = {}
                for word in words_of(pdf):
                    if word.page <= count["contents_pages"]:
                        continue
                    row = int((word.y + word.bottom) / 2 / (height / down))
                    self.assertTrue(word.right <= width and word.y >= row * height / down and
                                    word.bottom <= (row + 1) * height / down, (word.page, word.text))
                    cards.setdefault((word.page, row), []).append(word.text)
                whole = {}
                for words in cards.values():
                    text = " ".join(words)
                    number = re.search(r"card (\d+) of", text)
                    if number:
                        whole.setdefault(int(number.group(1)), []).append(text)
                self.assertEqual(sorted(whole), list(range(1, len(jobs) + 1)))
                for sides in whole.values():
                    text = " ".join(sides)
                    self.assertIn("Certificate, instructions", text)
                    if "DO NOT CUT" in text:
                        continue
                    self.check_words(["WORK DEAD", "shroud if any", "torque", "made by", "checked by", "gland batch"], text)
                    depths = len(re.findall(r"\b(saw \d|score \d|by eye, (?:lightly|half))", text))
                    self.assertGreaterEqual(depths, 1 if re.search(r"\bD-\d", text) else 3, text)

    def test_a_card_in_inches(self):
        """Each length of the front stands in inches on the back, converted exactly."""
        for name, tails, wanted in [("known", None, {"armour cut, from the end": "armour_cut_mm",
                                                     "bedding cut, from the end": "bedding_cut_mm"}),
                                    ("open", {"slack_mm": 40, "strip_mm": 10}, {})]:
            with self.subTest(name):
                job = self.variant("inches", lambda job: tails and job.update(tails=tails))
                sheet = json.loads(cutback("sheet", job, "--json").stdout)
                pdf, _ = self.make("inches", job, "--units", "in")
                words = " ".join(text_of(pdf, "-raw").split())
                rows = [f"{what} {sheet['marks'][key]:.1f} {sheet['marks'][key] / 25.4:.4f}" for what, key in wanted.items()]
                self.check_words(["IN INCHES, 1 in = 25.4 mm"] + rows, words)
                for plus in re.findall(r"reach \+ ([\d.]+) =", words):
                    self.check_words([f"mark 1, reach + {plus} {float(plus) / 25.4:.4f}"], words)
                self.assertEqual(overlaps(pdf), [])
                whole = place("inches_sheet.pdf")
                cutback("sheet", job, "--pdf", "--units", "in", "--output", whole)
                self.check_words(["In inches"] + rows, " ".join(text_of(whole, "-raw").split()))
        self.assertNotIn("INCHES", text_of(self.make("mm", job_path("pump-motor"))[0]))

    def test_a_sum_has_no_figure_beside_it(self):
        """While mark 1 waits for a length, nothing that is made from it stands from the end; and a
        tail that waits for its strip length says so."""
        job = self.variant("no_strip", lambda job: job.update(tails={"slack_mm": 40, "reach_mm": 180}))
        for paper in ("a6", "letter"):
            pdf, _ = self.make("no_strip", job, "--paper", paper)
            words = " ".join(text_of(pdf, "-raw").split())
            self.check_words(["strip + 248 =", "behind mark 1", "strip + 204"], words)
            self.assertNotIn("from the end", words)

    def test_blanks_say_what_they_take(self):
        """The limits are those of the sheet with the fact filled in."""
        def without(key):
            return self.variant("without_" + key, lambda job: (job.update(gland="ARM-16-M20"), job["entry"].pop(key)))
        def state(value):
            job = self.variant("wall", lambda job: (job.update(gland="ARM-16-M20"), job["entry"].update(wall_mm=value)))
            return json.loads(cutback("sheet", job, "--json").stdout)["state"]
        words = " ".join(text_of(self.make("wall", without("wall_mm"))[0], "-raw").split())
        most = float(re.search(r"MEASURE THE WALL where the gland sits \(at most ([\d.]+) mm\)", words).group(1))
        self.assertEqual((state(most), state(most + 0.5)), ("cut", "none"))
        words = " ".join(text_of(self.make("material", without("material"))[0], "-raw").split())
        self.check_words(["metal: go on; plastic: stop and ask"], words)

    def test_a_card_that_stops_can_be_checked(self):
        """What the end was taken for, with room to read it again, and its entry; nothing to be measured
        on the paper."""
        job = self.variant("stops", lambda job: (job["cable"].update(sheath_od_mm="80+80", bedding_mm="66+66", armour_mm="3.15"),
                                                 job["cable"].pop("csa_mm2"), job["cable"].pop("insulation"), job.pop("fault")))
        for paper in ("a5", "a6"):
            pdf, _ = self.make("stops", job, "--paper", paper)
            words = " ".join(text_of(pdf, "-raw").split())
            self.check_words(["READ AGAIN", "was 80.0", "was 66.0", "was 3.15", "M20, clearance hole", "read by"], words)
            self.assertNotIn("50 mm", words)
            self.assertNotIn("side 2", words)

    def test_a_card_says_what_it_was_made_from(self):
        """The readings and the route of the job, so that another cable or terminal is seen."""
        tails = {"slack_mm": 40, "strip_mm": 10, "reach_mm": 180}
        job = self.variant("from", lambda job: job.update(tails=tails))
        for paper in ("a5", "a6", "letter"):
            words = " ".join(text_of(self.make("from", job, "--paper", paper)[0], "-raw").replace("\u00a0", " ").split())
            self.check_words(["was 15.2", "was 10.", "was 0.90", "route 180, slack 40: check"], words)

    def test_the_rule_under_the_drawing(self):
        """A line at each millimetre, a longer one at each tenth, true to a tenth of a millimetre."""
        pdf, _ = self.make("rule", job_path("pump-motor"))
        raster = Raster(pdf, 1)
        for above, every in [(6, 10), (16, 100)]:  # pixels above the lower margin of 5 mm
            row = raster.rows[raster.height - 50 - above]
            middles = [x + length / 2 for x, length in raster.runs(row) if length <= 3]
            apart = [b - a for a, b in zip(middles, middles[1:])]
            steps = [gap for gap in apart if abs(gap - every) <= 1]
            self.assertGreater(len(steps), 0.9 * len(apart))
            self.assertGreater(len(steps), 1500 // every)
            even = [x for x in middles if abs((x - middles[5] + every / 2) % every - every / 2) <= 1.5]
            self.assertGreater(len(even), 0.95 * len(middles))

    def test_the_first_mark_of_a_sum_is_whole(self):
        """Nobody adds up halves; the tails come out longer by it."""
        with open(os.path.join(SOURCE, "data", "demo", "glands.csv"), encoding="utf-8") as file:
            rows = list(csv.DictReader(file))
        glands = place("half.csv")
        with open(glands, "w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, list(rows[0]))
            writer.writeheader()
            writer.writerows({**row, "armour_stop_mm": row["armour_stop_mm"] and str(float(row["armour_stop_mm"]) + 0.5)} for row in rows)
        tails = {"slack_mm": 40, "strip_mm": 10}
        known = self.variant("whole", lambda job: job.update(tails={**tails, "reach_mm": 180}))
        mark = json.loads(cutback("sheet", known, "--json", "--glands", glands).stdout)["marks"]["armour_cut_mm"]
        self.assertEqual(mark % 1, 0.5)
        job = self.variant("whole", lambda job: job.update(tails=tails))
        words = " ".join(text_of(self.make("whole", job, "--glands", glands)[0], "-raw").split())
        self.check_words([f"reach + {plain(mark - 180 + 0.5)} ="], words)

    def test_an_end_alone_of_its_type_has_its_own_card(self):
        """Ends that may be cut share a card that says so, with their places; another wall is another card."""
        tails = {"slack_mm": 40, "strip_mm": 10, "reach_mm": 180}
        jobs = [self.variant(f"alone{tag}", lambda job: (job.update(tag=tag, end="box", tails=tails), change(job)))
                for tag, change in [("T-1", lambda job: None), ("T-2", lambda job: None),
                                    ("W-6", lambda job: job["entry"].update(wall_mm=6)),
                                    ("Z-2", lambda job: job["area"].update(zone="2"))]]
        pdf, count = self.make("alone", *jobs, "--by", "type")
        self.assertEqual((count["cards"], count["ends"], count["fitting"]), (2, 4, 4))
        pages = [" ".join(text_of(pdf, "-raw", "-f", str(i), "-l", str(i)).split()) for i in range(1, pages_of(pdf) + 1)]
        of_type = [page for page in pages if "3 ends" in page]
        places = [json.loads(cutback("sheet", job, "--json").stdout)["state"] for job in jobs]
        self.assertEqual(places, ["cut"] * 4)
        self.check_words(["CUT", "T-1 box, zone 1, Ex e IIB, IP66", "T-2 box, zone 1", "Z-2 box, zone 2", "where the list has a zone"],
                         " ".join(of_type))
        self.assertNotIn("MEASURE FIRST", " ".join(pages))
        for tag in ("W-6",):
            own = [page for page in pages if tag in page]
            self.assertEqual(len(own), 1)
            self.check_words([tag + " box", "from the end", "checked by"], own[0])

    def test_a_register_with_jobs(self):
        register = place("jobs_made.csv")
        with open(register, "w", encoding="utf-8") as file:
            file.write("tag,end,made_at,by,part,batch,sheath_od_mm,bedding_mm,armour_mm,drum,torque_nm,armour_ohm,"
                       "insulation_mohm,test_v,remark\n"
                       "P-201,motor terminal box,2026-03-31,JB,ARM-16-M20,B12,15.3+15.1,10.6+10.7,0.9,,,,,,\n"
                       "P-205,flameproof switch,2026-03-31,JB,,,19.4+19.3,13.6+13.7,1.25,,,,,,\n"
                       "L-118,lamp,2026-03-31,JB,,,9.4+9.3,,,,,,,,\n")
        jobs = [job_path(name) for name in JOBS]
        pdf = place("jobs_made.pdf")
        done = cutback("cards", *jobs, "--made", register, "--output", pdf, "--json")
        self.assertEqual(json.loads(done.stdout)["made"], 1)
        words = " ".join(text_of(pdf, "-raw").split())
        self.check_words(["MADE", "Made with ARM-16-M20 on 2026-03-31 by JB."], words)
        self.assertIn(b"it does not say anything of L-118, lamp over the lime hopper; of this cable it has the end lamp", done.stderr)
        again = self.variant("read", lambda job: job["cable"].update(
            sheath_od_mm="19.4+19.3", bedding_mm="13.6+13.7", armour_mm="1.25"), base="flameproof-switch")
        self.check_words(figures_of(json.loads(cutback("sheet", again, "--json").stdout)), words)

    def test_the_contents_leave_nothing_out(self):
        stem = "FEEDER-OF-THE-PUMP-HOUSE-BEHIND-THE-TANKS-"
        jobs = [self.variant(f"long{i}", lambda job: job.update(tag=f"{stem}{i:02}")) for i in range(12)]
        for paper in ("a5", "a6"):
            pdf, count = self.make("contents", *jobs, "--paper", paper)
            contents = text_of(pdf, "-raw", "-l", str(count["contents_pages"]))
            squeezed = "".join(contents.split())
            self.check_words([f"{stem}{i:02}" for i in range(12)], squeezed)
            self.assertNotIn("…", contents)
            self.assertEqual(overlaps(pdf), [])

    def test_long_tags_differ_on_paper(self):
        """Nothing of a tag is left out: two cables that differ in their last letter stay two."""
        for paper in ("a5", "a6"):
            for stem in ("SEGMENT-", "A-VERY-LONG-TAG-OF-A-CABLE-THAT-NO-CARD-HOLDS-IN-ONE-LINE-" * 2):
                with self.subTest(paper=paper, stem=len(stem)):
                    jobs = [self.variant(f"tag{i}", lambda job: job.update(tag=stem + letter))
                            for i, letter in enumerate("AB")]
                    pdf, _ = self.make("tags", *jobs, "--paper", paper)
                    squeezed = "".join(text_of(pdf, "-raw").split())
                    for letter in "AB":
                        self.check_words([stem + letter], squeezed)
                    self.assertEqual(overlaps(pdf), [])

    def test_marks_are_on_the_front(self):
        """Also of a cable whose tails go on on the back, and of one with a name without end."""
        many = lambda job: (
            job["cable"].update(cores=61, csa_mm2=1.5, sheath_od_mm="35.0+35.2", bedding_mm="29.3+29.1", armour_mm="1.6"),
            job["entry"].update(entry="M40"), job.pop("fault"), job.pop("area"),
            job.update(tag="MANY-61", tails={"slack_mm": 40, "strip_mm": 8, "cores": [
                {"core": f"X1:{i + 1}", "reach_mm": 200 + 5 * i} for i in range(61)]}))
        long_name = lambda job: job.update(tag="T" * 120, end="a place with a name " * 12)
        for name, change in [("many", many), ("long", long_name)]:
            for paper in ("a5", "a6"):
                with self.subTest(name=name, paper=paper):
                    job = self.variant(name, change)
                    sheet = json.loads(cutback("sheet", job, "--json").stdout)
                    self.assertEqual(sheet["state"], "cut")
                    pdf, count = self.make(name, job, "--paper", paper)
                    front = " ".join(text_of(pdf, "-raw", "-f", "1", "-l", "1").split())
                    if name == "long" and paper == "a6":  # names that fill the side: the marks begin the next one
                        self.check_words(["GO ON WITH THE NEXT SIDE"], front)
                        front += " ".join(text_of(pdf, "-raw", "-f", "2", "-l", "2").split())
                    self.check_words([f"{plain(sheet['marks']['bedding_cut_mm'])} from the end", "AND READ, mm" if "BARE" in front else "BEFORE CUTTING",
                                      "REAR PARTS", "behind mark 1"], front)
                    whole = " ".join(text_of(pdf, "-raw").split())
                    self.check_words([plain(tail["length_mm"]) for tail in sheet["tails"]], whole)
                    self.assertEqual(overlaps(pdf), [])
                    # Whoever signs sees what for: tails or marks stand on that side too.
                    for page in range(1, pages_of(pdf) + 1):
                        words = text_of(pdf, "-raw", "-f", str(page), "-l", str(page))
                        if "checked by" in words:
                            self.assertRegex(words, "LENGTH|TAIL|CUT", page)

    def test_a_route_to_be_measured_is_a_sum(self):
        """The constants are the marks of the same end with its route, less that route."""
        reach = 180
        known = self.variant("known", lambda job: job.update(tails={"slack_mm": 40, "strip_mm": 10, "reach_mm": reach}))
        marks = json.loads(cutback("sheet", known, "--json").stdout)["marks"]
        for name, tails, before, less in [("open", {"slack_mm": 40, "strip_mm": 10}, "reach", reach),
                                          ("both", {"slack_mm": 40}, "reach + strip", reach + 10),
                                          ("strip", {"slack_mm": 40, "reach_mm": reach}, "strip", 10)]:
            with self.subTest(name):
                pdf, _ = self.make(name, self.variant(name, lambda job: job.update(tails=tails)))
                words = " ".join(text_of(pdf, "-raw").split())
                apart = marks["armour_cut_mm"] - marks["bedding_cut_mm"]
                self.check_words(["MEASURE FIRST", f"{before} + {plain(marks['armour_cut_mm'] - less)} =",
                                  f"{plain(apart)} in front of mark 1"], words)
                self.assertEqual("MEASURE THE ROUTE" in words, "reach" in before)
                self.assertNotIn("take it from the gland", words)

    def test_a_sketch_has_no_ticks(self):
        glands = place("no_stop.csv")
        with open(os.path.join(SOURCE, "data", "demo", "glands.csv"), encoding="utf-8") as file:
            rows = list(csv.DictReader(file))
        with open(glands, "w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, list(rows[0]))
            writer.writeheader()
            writer.writerows({**row, "armour_stop_mm": ""} for row in rows)
        pdf, _ = self.make("no_stop", job_path("pump-motor"), "--paper", "a6", "--glands", glands)
        words = text_of(pdf, "-raw")
        self.check_words(["SKETCH", "where the clamp ends"], words)
        self.assertNotIn("TRUE SIZE", words)
        for page in range(1, pages_of(pdf) + 1):
            rows = next(self.last_rows(Raster(pdf, page)))
            self.assertEqual(rows.longest(rows.rows), 0)

    def test_no_fit_says_none_and_what_to_do(self):
        change = lambda job: (job["cable"].update(sheath_od_mm="80+80", bedding_mm="66+66", armour_mm="3.15"),
                              job["cable"].pop("csa_mm2"), job["cable"].pop("insulation"), job.pop("fault"))
        job = self.variant("no_fit", change)
        pdf, _ = self.make("no_fit", job)
        words = " ".join(text_of(pdf, "-raw").split())
        self.check_words(["NONE", "DO NOT CUT", "WHAT TO DO", "Order a gland"], words)
        for word in ("from the end", "TRUE SIZE", "SKETCH", "job data", "checked by"):
            self.assertNotIn(word, words)

    def test_no_card_names_an_option_or_a_source(self):
        # What is wrong with a figure of the schedule is mended there, and named as it is named there.
        rows = [row for row in Schedules.HOSTILE if row["tag"] != "BAD-1"]
        path = schedule("plain_words.csv", rows + [{"tag": "W-1", "wall_mm": ""}, {"tag": "W-2", "hole": ""}])
        pdf, _ = self.make("plain_words", path)
        words = " ".join(text_of(pdf, "-raw").split())
        for word in ("--", "IEC ", "BS ", "ISO ", "checksum", "common practice", "_mm", "from memory"):
            self.assertFalse(word in words, word)

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
                    self.check_code(pdf, name, sheet, 2 if paper == "a6" else 1)

    def check_code(self, pdf, name, sheet, page):
        """At most 22 mm, and left out where its modules would be too small to be read."""
        want = cutback("sheet", job_path(name), "--qr-text").stdout.decode()
        words = text_of(pdf, "-raw")
        self.assertEqual("job data" in words, len(want) < 640, name)
        if "job data" not in words:
            return
        picture = place("code")
        page = str(page)
        call("pdftoppm", "-r", "600", "-png", "-f", page, "-l", page, "-singlefile", pdf, picture)
        # Other codes are looked for as well unless told: lines of a drawing can pass for a bar code.
        found = call("zbarimg", "-q", "--xml", "-Sdisable", "-Sqrcode.enable", picture + ".png").stdout.decode()
        code = re.search(r"CDATA\[(.*?)\]\]", found).group(1)
        corners = [[int(n) for n in one.split(",")] for one in re.findall(r"[+-](\d+,[+-]?\d+)", found)]
        for axis in (0, 1):
            places = [corner[axis] for corner in corners]
            if places:
                self.assertLessEqual((max(places) - min(places)) / 600 * 25.4, 22.3)
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

    def test_a_full_disk_is_an_error(self):
        for args in (["cards", job_path("pump-motor")], ["sheet", job_path("pump-motor"), "--pdf"]):
            with open("/dev/full", "wb") as full:
                done = subprocess.run([PROGRAM, *args], stdout=full, stderr=subprocess.PIPE, check=False)
            self.assertEqual(done.returncode, 3)
            self.assertIn(b"stdout", done.stderr)

    def test_every_side_says_whose_it_is(self):
        job = job_path("dust-lamp")
        sheet = json.loads(cutback("sheet", job, "--json").stdout)
        pdf, count = self.make("sides", job, "--paper", "a6")
        self.assertEqual(count["sides"], 2)
        for page in (1, 2):
            words = text_of(pdf, "-raw", "-f", str(page), "-l", str(page))
            self.check_words([sheet["tag"], sheet["end"], sheet["gland"]["part"], f"side {page} of 2", "CUT"], words)

    def test_options_in_the_code_are_measured(self):
        options = "--od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 --entry M20 --reach 90 --wall 2".split()
        again = place("options.json")
        with open(again, "wb") as file:
            file.write(cutback("sheet", *options, "--qr-text").stdout)
        want = json.loads(cutback("sheet", *options, "--json").stdout)
        self.assert_same_sheet(again, want)

    def test_same_bytes_on_one_core_and_on_all(self):
        path = schedule("cores.csv", [{"tag": f"C-{i}"} for i in range(150)])
        one_core = lambda: os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
        for options in ([], ["--paper", "a4", "--sort", "end"], ["--by", "type"]):
            with self.subTest(options):
                contents = []
                for before in (None, one_core):
                    out = place("cores.pdf")
                    done = subprocess.run([PROGRAM, "cards", path, *options, "--output", out, "--quiet"],
                                          preexec_fn=before, check=False, capture_output=True)
                    self.assertIn(done.returncode, (0, 1), done.stderr)
                    with open(out, "rb") as file:
                        contents.append(file.read())
                self.assertTrue(contents[0] == contents[1])

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
    "entry hole wall_mm material reach_mm strip_mm od_allow_mm bedding_allow_mm"
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
        for paper, each, *_ in Cards.PAPERS:
            with self.subTest(paper=paper, each=each):
                pdf, count = self.make("hostile", path, "--paper", paper, *each)
                self.assertEqual(count["ends"], 2 * len(self.HOSTILE))
                self.assertGreaterEqual(count["sides"], count["ends"])
                self.assertEqual(count["unusable"], 2)
                self.assertGreaterEqual(count["without_gland"], 2)
                self.assertEqual(count["pages"] + count["contents_pages"], pages_of(pdf))
                self.assertEqual(overlaps(pdf), [])
                words = " ".join(text_of(pdf, "-raw").split())
                self.check_words(("NONE-1", "BAD-1", "MANY-1", "Αντλία-Ω 12", "No gland fits", "DO NOT CUT"), words)
                self.assertNotIn("\u202e", words)

    def tags(self, pdf, first=1):
        """The tag of each page: its largest word."""
        words = [word for word in words_of(pdf) if word.page >= first]
        return [
            max((word for word in words if word.page == page), key=lambda word: word.size).text
            for page in range(first, pages_of(pdf) + 1)
        ]

    def test_order_choice_and_contents(self):
        names = ["P-10", "P-2", "P-1", "P-30", "P-7", "P-8"]
        path = schedule("order.csv", [{"tag": name} for name in names])
        pdf, count = self.make("given", path)
        self.assertEqual(count["contents_pages"], 2)  # twelve cards, and the cautions
        self.assertEqual(self.tags(pdf, 3), [name for name in names for _ in "ab"])
        contents = text_of(pdf, "-f", "1", "-l", "1", "-layout")
        for i, name in enumerate(names):
            self.assertRegex(contents, rf"{name} +from: MCC-1 +\S+ +CUT +{2 * i + 1}\n")
        pdf, _ = self.make("sorted", path, "--sort", "tag")
        self.assertEqual(
            self.tags(pdf, 3), [n for n in ["P-1", "P-2", "P-7", "P-8", "P-10", "P-30"] for _ in "ab"]
        )
        pdf, count = self.make("only", path, "--only", "P-7", "--only", "P-2")
        self.assertEqual(count["contents_pages"], 1)  # the cautions
        self.assertEqual(self.tags(pdf, 2), ["P-2", "P-2", "P-7", "P-7"])
        pdf, _ = self.make("places", path, "--sort", "end", "--only", "P-7", "--only", "P-2")
        self.assertEqual(self.tags(pdf, 2), ["MCC-1", "P-2", "P-7", "pump", "P-2", "P-7"])
        for tag, gland in [("J-1", "OUTER-16-M20"), ("J-2", "ARM-16-M20")]:
            with open(job_path("pump-motor"), encoding="utf-8") as file:
                job = json.load(file)
            with open(place(tag + ".json"), "w", encoding="utf-8") as file:
                json.dump({**job, "tag": tag, "gland": gland}, file)
        pdf, _ = self.make("glands", place("J-1.json"), place("J-2.json"), "--sort", "gland")
        self.assertEqual(self.tags(pdf, 2), ["J-2", "J-1"])
        done = cutback("cards", path, "--only", "P-99", "--output", place("none.pdf"), allowed=(2,))
        self.assertIn(b"P-99", done.stderr)
        self.assertFalse(os.path.exists(place("none.pdf")))

    def test_a_pack_says_what_it_is(self):
        """Card n of N, the schedule with a hash of what it holds, bookmarks, labels, cautions once."""
        rows = [{"tag": f"P-{i}"} for i in range(1, 7)]
        path = schedule("pack.csv", rows)
        pdf, count = self.make("pack", path)
        front = count["contents_pages"]
        words = text_of(pdf, "-raw")
        for number in range(1, 13):
            self.assertIn(f"card {number} of 12", words)
        one = re.search(r"pack\.csv ([0-9a-f]{8})", words).group(1)
        self.check_words(["Cautions for all of these cards"], text_of(pdf, "-raw", "-l", str(front)))
        other, _ = self.make("pack_again", schedule("pack.csv", [{**rows[0], "wall_mm": "3"}] + rows[1:]))
        self.assertNotEqual(re.search(r"pack\.csv ([0-9a-f]{8})", text_of(other, "-raw")).group(1), one)
        with open(pdf, "rb") as file:
            content = file.read()
        self.assertIn(b"/Outlines", content)
        self.assertIn(f"/PageLabels << /Nums [ 0 << /S /r >> {front} << /S /D >> ] >>".encode(), content)
        titles = re.findall(rb"/Title <FEFF([0-9A-F]+)>", content)
        self.assertEqual(len(titles), 12)
        self.assertIn("P-1, from: MCC-1, CUT", [bytes.fromhex(t.decode()).decode("utf-16-be") for t in titles])
        self.assertEqual(len(re.findall(rb"/Dest \[ \d+ 0 R /Fit \]", content)), 12)

    def test_places_have_their_ends_of_either_side(self):
        path = schedule("sides.csv", [{"tag": "P-1", "from": "A", "to": "B"}, {"tag": "P-2", "from": "B", "to": "A"}])
        pdf, count = self.make("places", path, "--sort", "end")
        self.assertEqual(count["place_pages"], 2)
        first = count["contents_pages"] + 1
        self.assertEqual(self.tags(pdf, first), ["A", "P-1", "P-2", "B", "P-1", "P-2"])
        place = text_of(pdf, "-raw", "-f", str(first), "-l", str(first))
        self.check_words(["2 ends", "TAKE ALONG", "2 OUTER-16-M20", "2 locknut M20", "2 sealing washer M20"], place)

    def test_a_place_shares_its_page(self):
        """On paper of two cards a page the list of a place takes no page of its own."""
        path = schedule("shares.csv", [{"tag": "P-1", "from": "A", "to": "B"}, {"tag": "P-2", "from": "B", "to": "A"}])
        pdf, count = self.make("shares", path, "--sort", "end", "--paper", "a4")
        self.assertEqual((count["place_pages"], count["pages"]), (2, 4))
        front = count["contents_pages"]
        for page, (name, tag) in zip((front + 1, front + 3), (("A", "P-1"), ("B", "P-1"))):
            words = text_of(pdf, "-raw", "-f", str(page), "-l", str(page))
            self.check_words([name, "TAKE ALONG", tag, "shares.csv"], words)
        self.check_words(["fold"], text_of(self.make("folds", path, "--paper", "a4", "--per-page", "4")[0]))

    def test_what_a_profile_decided_is_on_each_card(self):
        profile = place("profile.json")
        with open(profile, "w", encoding="utf-8") as file:
            json.dump({"slack_mm": "30", "rules": "strict"}, file)
        path = schedule("profile.csv", [{"tag": "P-1"}])
        pdf, _ = self.make("profile", path, "--profile", profile)
        words = " ".join(text_of(pdf, "-raw").split())
        self.assertEqual(words.count("A profile decided: rules strict, slack 30 mm."), 2)
        self.assertNotIn("profile decided", text_of(self.make("profile", path)[0]))

    def test_a_duplicate_is_said_on_both_cards(self):
        path = schedule("twice.csv", [{"tag": "P-1"}, {"tag": "P-2"}, {"tag": "P-1", "wall_mm": "3"}])
        pdf, count = self.make("twice", path)
        pages = [text_of(pdf, "-raw", "-f", str(i), "-l", str(i)) for i in range(1, pages_of(pdf) + 1)]
        cards = [page for page in pages if "card " in page]
        self.assertEqual(["This end has 2 cards" in page for page in cards], [True, True, False, False, True, True])

    def test_cards_of_types(self):
        """The constants are the marks of the ends less their routes; every end is on one list."""
        rows = [{"tag": f"T-{i}", "reach_mm": str(100 + 10 * i)} for i in range(40)]
        rows += [{"tag": "W-1", "wall_mm": "6"}, {"tag": "NONE-1", "sheath_od_mm": "80", "bedding_mm": "70", "evidence": "datasheet"}]
        path = schedule("types.csv", rows)
        pdf, count = self.make("types", path, "--by", "type")
        self.assertEqual(count["ends"], 2 * len(rows))
        self.assertEqual(count["cards"], 3)  # two walls, and what has no gland
        words = " ".join(text_of(pdf, "-raw").split())
        for row in rows:
            self.assertEqual(words.count(row["tag"] + " from"), 1, row["tag"])
            self.assertEqual(words.count(row["tag"] + " to"), 1, row["tag"])
        results = place("types_results.csv")
        cutback("schedule", path, "--output", results, "--quiet")
        with open(results, encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                if row["tag"] != "T-7":
                    continue
                rest = float(row["armour_cut_mm"]) - 170
                self.check_words([f"reach {'+' if rest >= 0 else chr(0x2212)} {plain(abs(rest))} ="], words)
        self.assertEqual(overlaps(pdf), [])
        only = schedule("types_fit.csv", rows[:5])
        self.assertEqual(call(PROGRAM, "cards", only, "--by", "type", "--output", place("x.pdf")).returncode, 0)
        self.assertEqual(call(PROGRAM, "cards", path, "--by", "type", "--output", place("x.pdf")).returncode, 1)

    def test_a_card_of_a_type_has_the_least_depths_of_its_ends(self):
        """A measured cable and one by its datasheet share a card: the saw goes no deeper than both allow."""
        one = {"tag": "M-1", "wall_mm": "2", "sheath_od_mm": "15.0+15.1", "bedding_mm": "10.5+10.6"}
        by_book = {**one, "tag": "D-1", "sheath_od_mm": "15.05", "bedding_mm": "10.55", "evidence": "datasheet",
                   "od_allow_mm": "0.7", "bedding_allow_mm": "0.5"}
        for rows in ([one, by_book], [by_book, one]):
            path = schedule("depths.csv", rows)
            saws = []
            for tag in ("M-1", "D-1"):
                pdf, _ = self.make("depth", path, "--only", tag)
                saws += re.findall(r"saw (\d\.\d)", text_of(pdf, "-raw"))
            self.assertEqual(len(set(saws)), 2, saws)
            pdf, count = self.make("depths", path, "--by", "type")
            self.assertEqual(count["cards"], 1)
            self.assertEqual(set(re.findall(r"saw (\d\.\d)", text_of(pdf, "-raw"))), {min(saws)})

    def test_a_script_without_a_font_is_said(self):
        pdf, count = self.make("no_font", schedule("no_font.csv", [{"tag": "\u6f22\u5b57-1"}, {"tag": "A-1"}]))
        if count["without_glyph"] == 0:
            self.skipTest("this machine has a font for it")
        words = text_of(pdf, "-raw")
        self.assertEqual(words.count("have no font here"), 2)

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
        first = count["contents_pages"] + 1
        pages = [text_of(pdf, "-f", str(i), "-l", str(i)) for i in range(first, pages_of(pdf) + 1)]
        self.assertIn("The results say otherwise", pages[0])
        self.assertIn("ARM-16-M20", pages[0])
        # What it says takes room, so that this card has a back.
        pages = [page for page in pages if "side 2" not in page]
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
                self.assertLessEqual(pages_of(pdf), 3)
                sheet = json.loads(cutback("sheet", job, "--json").stdout)
                words = " ".join(text_of(pdf, "-raw").split())
                self.check_words(figures_of(sheet), words)
                whole = [item["text"] for item in sheet["steps"] + sheet["inspection"]]
                whole += [check["says"] for check in sheet["checks"]]
                whole += sheet["cautions"] + sheet["sources"] + sheet["remarks"]
                # Where a line ends is no matter, and pdftotext joins words at their hyphens.
                signs = [("+/-", "\u00b1"), ("mm2", "mm\u00b2"), ("cm3", "cm\u00b3"), (" degC", "\u00b0C"), (" ", ""), ("-", "")]
                def squeeze(text):
                    for typed, sign in signs:
                        text = text.replace(typed, sign)
                    return text
                self.check_words([squeeze(text) for text in whole], squeeze(words))
                # The card stands on the upper half; the paper is folded at its ticks.
                raster = self.check_bars(pdf, 1)
                fold = raster.part(10, raster.height // 2 - 42, raster.width - 20, 35)
                self.assertGreaterEqual(fold.ticks(mark_distances(sheet)), 30)
                front = " ".join(text_of(pdf, "-raw", "-f", "1", "-l", "1").split())
                self.check_words(["AND READ, mm" if "BARE" in front else "BEFORE CUTTING", "Steps; a box is a hold point"], front)
                self.assertRegex(front, rf"Termination sheet, page 1 of \d . {name}\.json [0-9a-f]{{8}} ")
                if sheet["inspection"]:
                    self.check_words(["OK n/a remark"], words)
                self.assertNotIn("+/-", words)
                self.assertGreaterEqual(min(word.size for word in words_of(pdf)), 6.9)
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
                self.assertGreaterEqual(next(self.last_rows(raster)).ticks(mark_distances(sheet)), 30)
                # The check bar: the longest line that is as thick as it.
                bars = [
                    length
                    for y in range(raster.height - 8)
                    for x, length in raster.runs(raster.rows[y])
                    if 400 < length < 600 and all(
                        (x, length) in raster.runs(raster.rows[y + i]) for i in range(7))
                ]
                self.assertLessEqual(abs(max(bars, default=0) - 500), NEAR)
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

"""Makes the sample books that hold every kind of entry.

1. all-kinds-generator.py lines >lines.jsonl     the examples of docs/entries.md, each made whole, and what else an entry may have
2. closemown book import lines.jsonl --book format-2-all-kinds.closemown
   closemown book export --book format-2-all-kinds.closemown all-kinds.jsonl
3. all-kinds-generator.py format-1               format-1-all-kinds.closemown out of all-kinds.jsonl, by docs/book.md and the
                                                 first step of src/Closemown.Book/BookFormat.cs, without the program

Made once for each format; a sample, once kept, is never made anew.
"""
import hashlib
import json
import pathlib
import re
import sqlite3
import sys

HERE = pathlib.Path(__file__).parent
ROOT = HERE.parent.parent.parent
UNIT = "unit strip fit paper-cut paper-drag contact torch swath feeler clicks square-up lap stone grind rebuild strike gauge screw locked mow decline".split()


def lines():
    page = (ROOT / "docs/entries.md").read_text(encoding="utf-8")
    examples = [json.loads(line) for line in page[page.index("WRITE_DOCS"):].splitlines() if line.startswith('{"kind":')]
    more = [
        {"kind": "clicks", "left": 2, "right": -1, "by": "Zoë", "note": "said 'two', wrote \"2\" – Größe 草", "x-later": [1, {"a": None}], "voids": ident(9)},
        {"kind": "void", "voids": ident(3)},
        {"kind": "unit", "clickUm": 17.78, "typed": {"clickUm": "0.0007 in"}},
        {"kind": "weather", "area": "green", "date": "2026-05-02", "tMaxC": 17, "source": "f", "forecast": True},
    ]
    for n, body in enumerate(examples + more, 1):
        whole = {"v": 1, "id": ident(n), "at": f"2026-05-01T{8 + n // 60:02}:{n % 60:02}:00+01:00", **body}
        if body["kind"] in UNIT:
            whole.setdefault("unit", "cylinder")
        print(json.dumps(whole, ensure_ascii=False, separators=(",", ":")))


def ident(n):
    return f"019de28d-3c00-7000-8000-{n:012x}"


def format_1():
    source = (ROOT / "src/Closemown.Book/BookFormat.cs").read_text(encoding="utf-8")
    first = source[source.index("public static string[][] Steps"):].split("        ],")[0]
    path = HERE / "format-1-all-kinds.closemown"
    db = sqlite3.connect(path)
    for sql in re.findall(r'^\s+"(create .*)",$', first, re.M):
        db.execute(sql)
    before, seq, weather = bytes(32), 0, 0
    for line in (HERE / "all-kinds.jsonl").read_text(encoding="utf-8").splitlines():
        e = json.loads(line)
        if e["kind"] == "weather":
            weather += 1
            db.execute("insert into weather values (?,?,?,?,?,?,?)", (weather, e["id"], e.get("area", ""), e["date"], e.get("source", ""), int(e.get("forecast", False)), line))
            continue
        seq += 1
        before = hashlib.sha256(before + line.encode()).digest()
        db.execute("insert into entry values (?,?,?,?)", (seq, e["id"], line, before.hex()))
    db.execute("pragma application_id = 0x434C4D4E")
    db.execute("pragma user_version = 1")
    db.commit()
    db.execute("pragma journal_mode = delete")
    db.close()
    print(seq, weather, before.hex())


lines() if sys.argv[1:] == ["lines"] else format_1()

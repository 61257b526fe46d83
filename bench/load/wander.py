"""Five people of five roles wander through the clinic, press what they find and type nonsense.

    wander.py PORT SECONDS SEED NAME=CODE...

Each follows links and sends forms of the page before it, the fields filled by chance: what stood
there, numbers, dates, long texts, other alphabets, control signs, wrong choices, several values,
files of noise. Prints how many answers had which status, every answer of 500 and more with its
request, and every version of a case that was seen and is no longer there. Exits with 1 when there
was one of either.
"""
import random
import re
import sys
import threading
import time
from collections import Counter
from html import unescape
from http.cookiejar import CookieJar
from urllib.error import HTTPError
from urllib.parse import urlencode, urljoin, urlsplit
from urllib.request import HTTPCookieProcessor, Request, build_opener

FORM = re.compile(r"<form ([^>]*)>(.*?)</form>", re.S)
FIELD = re.compile(r"<(input|select|textarea)([^>]*)>(?:(.*?)</\1>)?", re.S)
ATTRIBUTE = re.compile(r'([\w-]+)="([^"]*)"')
# What would end a sitting: signing in anew, or another's account.
OWN = re.compile(r'action="/(me|code|accounts|sign-in)')
VERSION = re.compile(r"/cases/([0-9a-f-]{36})/versions/(\d+)")


def nonsense(r, given):
    return r.choice([
        lambda: given, lambda: given, lambda: given, lambda: "",
        lambda: str(r.randint(-5, 4000)), lambda: f"{r.uniform(0, 400):.2f}", lambda: "0,22 g/L", lambda: "<10mg/l H",
        lambda: "1e306", lambda: "2000000000", lambda: "+999999999-12-31", lambda: "2031-04-05T10:00",
        lambda: "yes", lambda: "no", lambda: "on", lambda: "unknown", lambda: "\u202eبنگ 中文 ß", lambda: "a\0b\x1b[31m",
        lambda: "<script>alert(1)</script>", lambda: "'; drop table audit; --", lambda: "x" * r.randint(1, 30000),
        lambda: "../../etc/passwd", lambda: "1:40 | ^~\\&",
    ])()


def fields(r, body):
    sent = []
    for kind, attributes, inner in FIELD.findall(body):
        given = {k: unescape(v) for k, v in ATTRIBUTE.findall(attributes)}
        name = given.get("name")
        if not name:
            continue
        value = given.get("value", "")
        if kind == "select":
            choices = [unescape(v) for v in re.findall(r'<option[^>]*value="([^"]*)"', inner or "")]
            value = r.choice(choices) if choices else ""
        elif given.get("type") in ("checkbox", "radio") and r.random() < .6:
            continue
        if given.get("type") == "file":
            value = bytes(r.randrange(256) for _ in range(r.randint(0, 300)))
        elif given.get("type") != "hidden" or (name != "_csrf" and r.random() < .03):
            value = nonsense(r, value) if r.random() < .5 else value
        if r.random() > .02:
            sent.append((name, value))
        if r.random() < .02:
            sent.append((name, nonsense(r, "")))
    return sent


def encoded(attributes, sent):
    if "multipart/form-data" not in attributes:
        plain = [(n, v.decode("latin-1") if isinstance(v, bytes) else v) for n, v in sent]
        return urlencode(plain, errors="replace").encode(), "application/x-www-form-urlencoded"
    edge = "----wander"
    parts = []
    for name, value in sent:
        is_file = isinstance(value, bytes)
        head = f'--{edge}\r\nContent-Disposition: form-data; name="{name}"' + ('; filename="a.json"' if is_file else "")
        parts.append(head.encode() + b"\r\n\r\n" + (value if is_file else value.encode("utf-8", "replace")) + b"\r\n")
    return b"".join(parts) + f"--{edge}--\r\n".encode(), "multipart/form-data; boundary=" + edge


class Wanderer(threading.Thread):
    seen, codes, faults, lock = {}, Counter(), [], threading.Lock()

    def __init__(self, base, name, code, seed, until):
        super().__init__()
        self.base, self.name_, self.code, self.r, self.until = base, name, code, random.Random(seed), until
        self.opener = build_opener(HTTPCookieProcessor(CookieJar()))
        self.at, self.page = "/sign-in", ""

    def ask(self, path, data=None, kind=None):
        headers = {"Origin": self.base, **({"Content-Type": kind} if kind else {})}
        try:
            answer = self.opener.open(Request(urljoin(self.base, path), data, headers), timeout=60)
        except HTTPError as refused:
            answer = refused
        except (OSError, ValueError) as e:
            with self.lock:
                self.codes[type(e).__name__] += 1
            return
        text = answer.read(3_000_000).decode("utf-8", "replace")
        with self.lock:
            self.codes[answer.status] += 1
            if answer.status >= 500:
                self.faults.append((answer.status, self.name_, path, (data or b"")[:2000]))
            for case, number in VERSION.findall(text):
                self.seen[case] = max(self.seen.get(case, 0), int(number))
        if "<html" in text:
            self.at, self.page = urlsplit(answer.geturl()).path, text

    def step(self):
        r = self.r
        forms = [f for f in FORM.findall(self.page) if "/sign-out" not in f[0] and not OWN.search(f[0])]
        links = [unescape(h) for h in re.findall(r'<a [^>]*href="(/[^"#]*)"', self.page)]
        if forms and r.random() < .5:
            attributes, body = r.choice(forms)
            where = unescape(dict(ATTRIBUTE.findall(attributes)).get("action", self.at))
            data, kind = encoded(attributes, fields(r, body))
            self.ask(where, data, kind)
        elif links and r.random() < .9:
            self.ask(r.choice(links))
        else:
            self.ask(r.choice(["/day", "/cases", "/figures", "/facts", "/trail", "/accounts", "/me", "/"]))

    def run(self):
        self.ask("/sign-in")
        token = re.search(r'name="_csrf" value="([^"]+)"', self.page).group(1)
        self.ask("/code", urlencode({"_csrf": token, "next": "", "code": self.code}).encode())
        while time.time() < self.until:
            self.step()
            time.sleep(.15)


def main(port, seconds, seed, *people):
    until = time.time() + float(seconds)
    base = f"http://127.0.0.1:{port}"
    all_ = [Wanderer(base, *p.split("=", 1), int(seed) + i, until) for i, p in enumerate(people)]
    for each in all_:
        each.start()
    for each in all_:
        each.join()
    print("answers:", dict(Wanderer.codes))
    for fault in Wanderer.faults:
        print("fault:", *fault)
    lost = []
    for case, number in Wanderer.seen.items():
        Wanderer.codes.clear()
        all_[0].ask(f"/cases/{case}/versions/{number}")
        if 404 in Wanderer.codes:
            lost.append((case, number))
    print(f"{len(Wanderer.seen)} cases seen, {sum(Wanderer.seen.values())} versions, lost: {lost}")
    return 1 if Wanderer.faults or lost else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

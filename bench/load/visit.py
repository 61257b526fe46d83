"""One person at the clinic, over HTTP, with the standard library alone.

    visit.py PORT let-in CODE PASSWORD    comes in by a one-time code and sets a password
    visit.py PORT day PASSWORD            seconds until the first day after a start is complete
    visit.py PORT search PASSWORD         ms of a search over all cases: half of them are faster
"""
import re
import sys
import time
from http.cookiejar import CookieJar
from urllib.parse import urlencode
from urllib.request import HTTPCookieProcessor, Request, build_opener

SOUGHT = ("optic neuritis", "M 1", "bands", "2026", "nothing like this")


class Visit:
    def __init__(self, port):
        self.base = f"http://127.0.0.1:{port}"
        self.opener = build_opener(HTTPCookieProcessor(CookieJar()))
        self.page = ""

    def get(self, path):
        self.page = self.opener.open(self.base + path).read().decode()
        return self.page

    def post(self, path, **fields):
        token = re.search(r'name="_csrf" value="([^"]+)"', self.page).group(1)
        body = urlencode({"_csrf": token, **fields}).encode()
        self.page = self.opener.open(Request(self.base + path, body, {"Origin": self.base})).read().decode()
        return self.page

    def sign_in(self, password):
        self.get("/sign-in")
        self.post("/sign-in", next="", name="invented-clinician", password=password)


def let_in(visit, code, password):
    visit.get("/sign-in")
    visit.post("/code", next="", code=code)
    visit.get("/me")
    visit.post("/me", password=password)


def day(visit, password):
    visit.sign_in(password)
    begun = time.time()
    while "data-renew" in visit.get("/day"):
        time.sleep(0.2)
    print(f"{time.time() - begun:.2f}")


def search(visit, password):
    visit.sign_in(password)
    times = []
    for text in SOUGHT * 10:
        visit.get("/me")
        begun = time.time()
        visit.post("/cases/find", text=text)
        times.append(1000 * (time.time() - begun))
    print(f"{sorted(times)[len(times) // 2]:.0f}")


if __name__ == "__main__":
    {"let-in": let_in, "day": day, "search": search}[sys.argv[2]](Visit(sys.argv[1]), *sys.argv[3:])

# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes C++ sources anew with mutants in them: small changes, each of which would be a fault. All are compiled at once;
the environment variable MUTANT tells by number which of them is there when the program runs. What may be changed, and from
where to where it goes, is read from clang's syntax tree."""
import json
import os
import subprocess
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field

ASSERTED = "-D_GLIBCXX_ASSERTIONS"  # what a mutant reads beyond an end is a fault that shows
PRELUDE = """#pragma once
#include <cstdio>
#include <cstdlib>
#include <vector>
namespace mutant {
/// Tells into the file MUTANTS_REACHED, when the program ends, which of the places were run at all.
struct Reached {
    std::vector<bool> numbers = std::vector<bool>(100000);
    const char* file = std::getenv("MUTANTS_REACHED");
    ~Reached()
    {
        if (std::FILE* out = file ? std::fopen(file, "a") : nullptr) {
            for (int k = 0; k < 100000; ++k) {
                if (numbers[static_cast<std::size_t>(k)]) { std::fprintf(out, "%d\\n", k); }
            }
            std::fclose(out);
        }
    }
};
inline bool is(int number)
{
    static Reached reached;
    static const int active = std::getenv("MUTANT") ? std::atoi(std::getenv("MUTANT")) : -1;
    if (reached.file) { reached.numbers[static_cast<std::size_t>(number)] = true; }
    return number == active;
}
} // namespace mutant
"""

SWAPPED = {"<": ["<=", ">="], "<=": ["<", ">"], ">": [">=", "<="], ">=": [">", "<"], "==": ["!="], "!=": ["=="],
           "+": ["-"], "-": ["+"], "*": ["/"], "/": ["*"], "&&": ["||"], "||": ["&&"], "+=": ["-="], "-=": ["+="],
           "*=": ["/="], "/=": ["*="]}
TERMS = {"+", "-", "*", "/", "&&", "||"}  # of these, one side may be left out
FUNCTIONS = {"any_of": "all_of", "all_of": "any_of", "none_of": "all_of", "max": "min", "min": "max"}
BOUNDS = {"above": "below", "below": "above"}


@dataclass
class Site:
    """A stretch of the source, and what may stand in its place."""
    begin: int
    end: int
    statement: bool
    truth: bool = False  # whether only true or false is wanted of it
    changes: list = field(default_factory=list)  # (what is changed, the other text)
    inner: list = field(default_factory=list)


@dataclass
class Mutant:
    file: str
    line: int
    what: str
    before: str
    after: str


def syntax_tree(path, flags):
    """All declarations of the project in this source, as clang tells them."""
    text = subprocess.run(["clang++", *flags, "-fsyntax-only", "-Xclang", "-ast-dump=json", "-Xclang",
                           "-ast-dump-filter=tuckwright", str(path)], capture_output=True, text=True, check=True).stdout
    at, found, decoder = 0, [], json.JSONDecoder()
    while (at := text.find("{", at)) >= 0:
        node, at = decoder.raw_decode(text, at)
        found.append(node)
    return found


class Reader:
    """Collects the sites of one source."""

    def __init__(self, path):
        self.source = path.read_text()
        self.bytes = self.source.encode()
        self.sites = {}
        self.plain = []  # texts that are replaced as they are: constants that must not be known to the compiler

    def text(self, begin, end):
        return self.bytes[begin:end].decode()

    @staticmethod
    def place(node):
        """Begin and end of a node; nothing where it is not of this file, or made by a macro."""
        begin, end = (node.get("range", {}).get(side, {}) for side in ("begin", "end"))
        if "offset" not in begin or "offset" not in end or "includedFrom" in begin or "includedFrom" in end:
            return None
        return begin["offset"], end["offset"] + end["tokLen"]

    def add(self, begin, end, what, other, statement=False, truth=False):
        site = self.sites.setdefault((begin, end, statement), Site(begin, end, statement))
        site.truth = site.truth or truth
        if other != self.text(begin, end) and all(other != known for _, known in site.changes):
            site.changes.append((what, other))

    def read(self, node, parents):
        kind = node.get("kind", "")
        if "includedFrom" in node.get("loc", {}):
            return
        if kind in ("StaticAssertDecl", "EnumDecl", "TemplateArgument"):
            return
        if kind == "VarDecl" and node.get("constexpr"):
            place = self.place(node)
            if not place or node["type"]["qualType"] != "const double":
                return
            at = self.bytes.find(b"constexpr", place[0] - 12, place[1])
            if at >= 0:
                self.plain.append((at, at + len(b"constexpr"), "const"))
        place = self.place(node)
        if place and parents:
            self.look(node, kind, *place, parents)
        inner = node.get("inner", [])
        if kind == "CXXRewrittenBinaryOperator":
            inner = self.rewritten(inner[0], place)
        for index, child in enumerate(inner):
            if kind == "CaseStmt" and index == 0:
                continue
            self.read(child, parents + [(node, index)])

    def look(self, node, kind, begin, end, parents):
        inner = node.get("inner", [])
        parent, index = parents[-1]
        if kind in ("BinaryOperator", "CompoundAssignOperator") and len(inner) == 2:
            self.operator(node["opcode"], node, begin, end, inner[0], inner[1])
        elif kind == "CXXOperatorCallExpr" and len(inner) == 3:
            callee = self.named(inner[0])
            if callee.startswith("operator"):
                self.operator(callee[len("operator"):], node, begin, end, inner[1], inner[2])
        elif kind == "UnaryOperator" and node["opcode"] in ("!", "-"):
            self.add(begin, end, f"drop {node['opcode']}", self.text(begin + 1, end), truth=node["opcode"] == "!")
        elif kind == "IntegerLiteral":
            self.number(node, begin, end, parents)
        elif kind == "FloatingLiteral":
            self.add(begin, end, "constant", f"2 * {self.text(begin, end)}")
        elif kind == "CXXBoolLiteralExpr":
            self.add(begin, end, "constant", "false" if node["value"] else "true")
        elif kind == "MemberExpr" and node.get("name", "").lstrip(".->") in BOUNDS:
            name = node["name"].lstrip(".->")
            if self.text(begin, end).endswith(name):
                self.add(begin, end, "other bound", self.text(begin, end - len(name)) + BOUNDS[name])
        elif kind == "CallExpr" and inner and self.named(inner[0]) in FUNCTIONS:
            name = self.named(inner[0])
            text = self.text(begin, end)
            if text.startswith("std::" + name):
                self.add(begin, end, "other function", text.replace(name, FUNCTIONS[name], 1))
        if kind in ("IfStmt", "ConditionalOperator", "WhileStmt"):
            self.condition(node, kind, inner)
        if kind == "ReturnStmt":
            self.returned(begin, end, inner, parents)
        if parent.get("kind") == "CompoundStmt":
            self.statement(node, kind, begin, end)
        if kind == "CompoundStmt":
            self.body(parent, begin)

    def named(self, node):
        """The name that an expression stands for, through what clang puts around it."""
        while node.get("inner") and node.get("kind") in ("ImplicitCastExpr", "ParenExpr"):
            node = node["inner"][0]
        return node.get("referencedDecl", {}).get("name", node.get("name", ""))

    def operator(self, sign, node, begin, end, left, right):
        kind = node.get("type", {}).get("qualType", "")
        first, second = self.place(left), self.place(right)
        if not first or not second or sign not in SWAPPED or any(word in kind for word in ("string", "char", "iterator")):
            return
        between = self.text(first[1], second[0])
        if sign not in between:
            return
        one, other = self.text(begin, first[1]), self.text(second[0], end)
        truth = sign in ("&&", "||")
        is_statement = sign.endswith("=") and sign not in ("==", "!=", "<=", ">=")
        for swap in SWAPPED[sign]:
            text = one + between.replace(sign, swap, 1) + other
            self.add(begin, end, f"{sign} to {swap}", text, truth=truth) if not is_statement else \
                self.add(begin, self.semicolon(end), f"{sign} to {swap}", text + ";", True)
        if sign in TERMS:
            self.add(begin, end, "drop term", one, truth=truth)
            if sign not in ("-", "/"):
                self.add(begin, end, "drop term", other, truth=truth)

    def rewritten(self, node, place):
        """Both sides of a comparison that the compiler makes of another, such as "not equal" of "equal"."""
        while node.get("kind") != "CXXOperatorCallExpr":
            node = node["inner"][0]
        left, right = node["inner"][1:]
        if self.place(left) and self.place(right) and self.place(left)[0] > self.place(right)[0]:
            left, right = right, left
        if place and self.place(left) and self.place(right):
            between = self.text(self.place(left)[1], self.place(right)[0]).strip()
            self.operator(between, node | {"type": {"qualType": "bool"}}, *place, left, right)
        return [left, right]

    def number(self, node, begin, end, parents):
        if "'" in self.text(begin, end) or not node["value"].isdigit():
            return
        value = int(node["value"])
        for parent, index in reversed(parents):
            if parent.get("kind") in ("ImplicitCastExpr", "ConstantExpr"):
                continue
            if parent.get("kind") == "ArraySubscriptExpr" or (
                    parent.get("kind") == "CXXOperatorCallExpr" and index == 2 and
                    self.named(parent["inner"][0]) == "operator[]"):
                self.add(begin, end, "other index", str((value + 1) % 3))
                return
            if parent.get("kind") == "VarDecl" and "[" in parent["type"]["qualType"]:
                return
            break
        self.add(begin, end, "constant", str(value + 1))
        if value > 0:
            self.add(begin, end, "constant", str(value - 1))

    def condition(self, node, kind, inner):
        if node.get("hasVar"):
            return
        place = self.place(inner[1 if node.get("hasInit") else 0])
        if place:
            self.add(*place, "condition", "false", truth=True)
            if kind != "WhileStmt":
                self.add(*place, "condition", "true", truth=True)

    def semicolon(self, end):
        at = self.bytes.find(b";", end)
        return at + 1 if at >= 0 and not self.bytes[end:at].strip() else end

    def statement(self, node, kind, begin, end):
        is_expression = kind in ("CallExpr", "CXXMemberCallExpr", "BinaryOperator", "CompoundAssignOperator",
                                 "CXXOperatorCallExpr", "ExprWithCleanups", "BreakStmt", "ContinueStmt")
        until = self.semicolon(end)
        if is_expression and until > end:
            self.add(begin, until, "drop statement", "", True)

    def returned(self, begin, end, inner, parents):
        until = self.semicolon(end)
        function = next((p for p, _ in reversed(parents) if "Decl" in p.get("kind", "")), {})
        body = next((c for c in function.get("inner", []) if c.get("kind") == "CompoundStmt"), {})
        last = (body.get("inner") or [{}])[-1]
        is_void = not inner
        in_lambda = len(parents) > 1 and parents[-2][0].get("kind") == "LambdaExpr"
        if parents[-1][0] is not body and not in_lambda and parents[-1][0].get("kind") == "CompoundStmt" and \
                (is_void or last.get("kind") == "ReturnStmt"):
            self.add(begin, until, "drop return", "", True)
        if inner and inner[0].get("type", {}).get("qualType") == "bool" and self.place(inner[0]):
            place = self.place(inner[0])
            self.add(*place, "negate", f"!({self.text(*place)})")

    def body(self, parent, begin):
        if parent.get("kind") not in ("FunctionDecl", "CXXMethodDecl") or parent.get("name") == "operator()":
            return
        kind = parent.get("type", {}).get("qualType", "").split("(")[0].strip()
        if kind.endswith(("&", "*")) or "auto" in kind:
            return
        values = {"void": [""], "bool": ["true", "false"]}.get(kind, ["{}"])
        for value in values:
            self.add(begin + 1, begin + 1, "return at once", f"return {value};".replace(" ;", ";"), True)


def nested(sites):
    """The sites as a tree, each within the smallest that holds it; what crosses another is left out."""
    top = Site(-1, 1 << 60, False)
    path = [top]
    for site in sorted(sites, key=lambda s: (s.begin, -s.end, not s.statement)):
        while path[-1].end <= site.begin:
            path.pop()
        if site.end > path[-1].end:
            continue
        path[-1].inner.append(site)
        if site.end > site.begin:
            path.append(site)
    return top.inner


class Writer:
    """Numbers the mutants and writes the source with all of them."""

    def __init__(self, reader, file, mutants):
        self.reader, self.file, self.mutants = reader, file, mutants

    def number(self, site, what, other):
        text = self.reader.text
        line = self.reader.bytes[:site.begin].count(b"\n") + 1
        before, after = (" ".join(t.split()) for t in (text(site.begin, site.end), other))
        self.mutants.append(Mutant(self.file, line, what, before, after))
        return len(self.mutants) - 1

    def stretch(self, begin, end, sites):
        parts, at = [], begin
        for site in sites:
            parts += [self.plain(at, site.begin), self.site(site)]
            at = site.end
        return "".join(parts) + self.plain(at, end)

    def plain(self, begin, end):
        text, at = "", begin
        for first, last, other in sorted(self.reader.plain):
            if begin <= first and last <= end:
                text, at = text + self.reader.text(at, first) + other, last
        return text + self.reader.text(at, end)

    def site(self, site):
        numbered = [(self.number(site, what, other), other) for what, other in site.changes]
        if site.begin == site.end:  # where a body begins
            return "".join(f" if (mutant::is({n})) {{ {other} }} " for n, other in numbered)
        own = self.stretch(site.begin, site.end, site.inner)
        if not numbered:
            return own
        if site.statement:
            return "{ " + "".join(f"if (mutant::is({n})) {{ {other} }} else " for n, other in numbered) + f"{{ {own} }} }}"
        kind = "bool" if site.truth else ""
        return "(" + "".join(f"mutant::is({n}) ? {kind}({other}) : " for n, other in numbered) + f"{kind}({own}))"


def read(path, flags):
    reader = Reader(path)
    for tree in syntax_tree(path, flags):
        reader.read(tree, [])
    return reader


def write(sources, folder, flags):
    """Writes all sources with mutants into a folder, and gives the mutants in the order of their numbers."""
    folder.mkdir(parents=True, exist_ok=True)
    mutants = []
    (folder / "mutant.hpp").write_text(PRELUDE)
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        readers = list(pool.map(read, sources, [flags] * len(sources)))
    for path, reader in zip(sources, readers):
        sites = nested(s for s in reader.sites.values() if s.changes)
        text = Writer(reader, path.name, mutants).stretch(0, len(reader.bytes), sites)
        target, written = folder / path.name, f'#include "{folder}/mutant.hpp"\n' + text
        if not target.exists() or target.read_text() != written:
            target.write_text(written)
    return mutants

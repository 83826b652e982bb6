"""Checks an exported job from the words of RECORD.md alone, without the program.

    check_record.py JOB.zip [PUBLIC KEY as printed on the certificate]

Hashes with hashlib, signatures with the package cryptography. Ends with 1 and
says what is wrong.
"""

import base64
import hashlib
import json
import sys
import zipfile

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

wrong = []


def sha256(content):
    return hashlib.sha256(content).hexdigest()


def unpadded(text):
    return base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))


def signed(key, signature, message):
    try:
        Ed25519PublicKey.from_public_bytes(unpadded(key)).verify(unpadded(signature), message.encode())
        return True
    except (InvalidSignature, ValueError):
        return False


def demand(true, says):
    if not true:
        wrong.append(says)


def check(path, key):
    archive = zipfile.ZipFile(path)
    manifest = json.loads(archive.read("manifest.json"))
    key = key or manifest["key"]
    fingerprint = sha256(unpadded(key))[:16]

    # The record: each line names the hash of the one before.
    text = archive.read("record.jsonl")
    demand(text.endswith(b"\n"), "the last line was cut off")
    lines = text.removesuffix(b"\n").split(b"\n")
    before, standing, files, certificates = "0" * 64, {}, {}, []
    for number, line in enumerate(lines, 1):
        entry = json.loads(line)
        at = f"entry {number}: "
        demand(entry["format"] == 1, at + "its form is not 1")
        demand(entry["job"] == manifest["job"], at + "it belongs to another job")
        demand(entry["seq"] == number, at + f"it says that it is entry {entry['seq']}")
        demand(entry["prev"] == before, at + "it does not follow the line before")
        place = (entry["step"], entry["item"], entry.get("place", ""))
        demand(entry.get("corrects", 0) == standing.get(place, 0), at + "it does not follow what stood in its place")
        standing[place], before = number, sha256(line)
        value = entry["value"]
        for name in ("file", "thumb"):
            if name in value:
                files[value[name]["sha256"]] = value[name]
        if entry["kind"] == "certificate" and "text" in value:
            certificates.append((at, value["text"]))
    demand(manifest["head"] == {"entry": len(lines), "hash": before}, "the record does not end as the manifest says")

    # The seal of the export.
    seal = (f"Axlewright export 1\nnumber {manifest['number']}\njob {manifest['job']}\n"
            f"entry {len(lines)}\nhash {before}\nkey {fingerprint}\n")
    demand(manifest["seal"] == seal, "the seal is not that of this record")
    demand(signed(key, manifest["signature"], seal), "the seal was not signed with this key")

    # Each certificate: six lines and the signature over them.
    for at, text in certificates:
        message, signature = text[: text.rindex("\n") + 1], text[text.rindex("\n") + 1 :]
        said = dict(line.split(" ", 1) for line in message.splitlines()[1:])
        demand(text.startswith("Axlewright certificate 1\n"), at + "it does not begin as a certificate does")
        demand(said["job"] == manifest["job"], at + "the certificate is of another job")
        demand(said["hash"] == sha256(lines[int(said["entry"]) - 1]), at + "the certificate is of another record")
        demand(said["key"] == fingerprint, at + "the certificate is of another key")
        demand(signature.startswith("signature ") and signed(key, signature.removeprefix("signature "), message),
               at + "the certificate was not signed with this key")

    # Photographs and papers have the hash that is their name.
    there = {name.split("/")[1].split(".")[0]: name for name in archive.namelist() if name.startswith("files/")}
    for hash, file in files.items():
        if hash not in there:
            wrong.append(f"the file {hash} is missing")
            continue
        content = archive.read(there[hash])
        demand(sha256(content) == hash and len(content) == file["bytes"], f"the file {there[hash]} is not what it was")
    return f"{len(lines)} entries, {len(files)} files, {len(certificates)} certificates"


said = check(sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else "")
print("\n".join(wrong) or "whole: " + said)
sys.exit(bool(wrong))

#!/usr/bin/env python3
"""A line feed for AimTrainer: boards at the arrows, one a line on standard input, become shots. See docs/feeds.md. FEED_TOKEN=... line_feed.py HOST PORT STATION"""
import json, os, socket, sys, time

host, port, station = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
hello = {"station": station, **({"token": os.environ["FEED_TOKEN"]} if "FEED_TOKEN" in os.environ else {})}
run, link = int(time.time()), None  # The run's time makes the ids of its shots unlike those of any other run.

def say(message):
    link.write(json.dumps(message) + "\n")
    link.flush()
    if not (line := link.readline()):
        raise ConnectionError("the host left")
    return json.loads(line)

for number, board in enumerate(sys.stdin, 1):
    shot = {"id": f"example-{run}-{number}", "arrowsBoard": float(board)}
    while True:
        try:
            if link is None:
                link = socket.create_connection((host, port), timeout=30).makefile("rw", encoding="utf-8", newline="\n")
                if (welcome := say({"hello": hello}))["answer"] != "welcome":
                    sys.exit(welcome["why"])
            if not (answer := say(shot)).get("sendAgain"):
                break
        except OSError:
            link = None  # Connect anew and send the same shot again: the same id counts once.
        time.sleep(1)
    print(answer["answer"], shot["id"], answer.get("why", ""), flush=True)

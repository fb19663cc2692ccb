"""What a shop works on and what it uses up, as a quote and a shop's own prices name it."""

TASKS = (
    ("inspect", "Inspect and measure"), ("strip", "Strip the old finish"), ("tune", "Weight and tiller"),
    ("track", "Straighten, tracking"), ("grip", "Slim the grip"), ("inserts", "Drill, set inserts"),
    ("fill", "Fill pinholes"), ("sand", "Sand through the grits"), ("spray", "Seal and spray"),
    ("letter", "Lettering"), ("rub", "Rub out, polish"), ("string", "String and nocking point"),
    ("record", "Record, hand over"), ("other", "Other work"),
)

ITEMS = (
    ("finish", "Finish and thinner"), ("abrasives", "Abrasives"), ("glue", "Glue and filler"),
    ("inserts", "Inserts and screws"), ("string", "String"), ("letters", "Lettering"),
    ("packing", "Packing and carriage"), ("other", "Other material"),
)

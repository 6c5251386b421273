"""Opens a workbook in LibreOffice and prints how many milliseconds each full recalculation takes, and one cell's value."""
import json
import sys
import time

import uno
from com.sun.star.beans import PropertyValue

pipe, url, runs, cell = sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4]
resolver = uno.getComponentContext().ServiceManager.createInstanceWithContext(
    "com.sun.star.bridge.UnoUrlResolver", uno.getComponentContext()
)
for attempt in range(240):
    try:
        context = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        break
    except Exception:
        if attempt == 239:
            raise
        time.sleep(0.25)
desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
book = desktop.loadComponentFromURL(url, "_blank", 0, (PropertyValue(Name="Hidden", Value=True),))
took = []
for _ in range(runs):
    start = time.perf_counter()
    book.calculateAll()
    took.append((time.perf_counter() - start) * 1000)
value = book.Sheets.getByIndex(0).getCellRangeByName(cell).Value
book.close(True)
try:
    desktop.terminate()
except Exception:
    pass
print(json.dumps({"took": took, "value": value}))

"""The pages before the sheets: printing, taping, hanging, step by step."""

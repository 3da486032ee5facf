"""Makes the sample workbooks and the templates anew."""

import sys

from tests.demo.make import SAMPLES, TEMPLATES, write_metric, write_samples, write_templates

if sys.argv[1:] == ["metric"]:
    write_metric(SAMPLES)
else:
    write_samples(SAMPLES)
    write_templates(TEMPLATES)

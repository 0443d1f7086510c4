"""The web application as a WSGI server takes it."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "apiary.settings")
application = get_wsgi_application()

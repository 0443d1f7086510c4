"""What a person sends on inventory's pages, checked. Changes nothing: the acts do."""

from inventory.forms.acts import ActForm
from inventory.forms.bench import AssembleForm, MarkForm, ScrapForm
from inventory.forms.boxes import GoingOnForm, PullForm
from inventory.forms.counts import CountForm
from inventory.forms.ends import EndForm
from inventory.forms.evening import EveningForm
from inventory.forms.ground import GroundForm, ground_form
from inventory.forms.lines import LinesForm, MendForm, MoveForm
from inventory.forms.loads import HaulForm
from inventory.forms.loans import BackForm, LendForm
from inventory.forms.receipts import ReceiptForm
from inventory.forms.salvage import SalvageForm
from inventory.forms.sheets import SheetForm
from inventory.forms.yardwide import DrawForm, FeedForm

__all__ = [
    "ActForm",
    "AssembleForm",
    "BackForm",
    "CountForm",
    "DrawForm",
    "EndForm",
    "EveningForm",
    "FeedForm",
    "GoingOnForm",
    "GroundForm",
    "HaulForm",
    "LendForm",
    "LinesForm",
    "MarkForm",
    "MendForm",
    "MoveForm",
    "PullForm",
    "ReceiptForm",
    "SalvageForm",
    "ScrapForm",
    "SheetForm",
    "ground_form",
]

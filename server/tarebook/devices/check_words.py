"""Two words that a joining phone and the home computer both show, so that a yes is said to the phone in one's hand.

They are drawn for each joining and prove nothing by themselves: the code has done that. They tell two phones apart that
ask at the same moment, one of which nobody meant to let in.
"""

import secrets

_TEXT = """
acorn amber anchor apple apron arrow aspen attic badge bagel baker bamboo banjo barley barrel basil basket beach
beacon beaver bench berry birch bishop bonnet bottle bramble brass bread breeze brick bridge broom bucket butter
button cabin cactus camel candle canoe canvas carpet carrot castle cedar cello chalk cherry chess circus clover
cobble cocoa coffee comet copper coral cotton cradle crayon cricket crystal cushion daisy dancer desert diamond
dinner dolphin donkey dragon drummer eagle easel echo ember engine evening falcon farmer feather fender ferry fiddle
finch flame flint flute forest fossil fountain fox garden garlic garnet ginger glacier glove goblet granite grape
gravel hammer harbour harvest hazel heather hedge helmet heron hollow honey hornet island ivory ivy jacket jasmine
jelly jigsaw juniper kettle kitten ladder lagoon lantern laurel lemon lentil lily linen lobster locket lotus magnet
magnolia magpie mango maple marble meadow melon mirror mitten monkey mosaic mountain muffin mustard napkin needle
nettle nickel noodle nutmeg oasis oatmeal ocean olive onion orange orchard otter oyster paddle panda parcel parsley
pasture peach peanut pebble pelican pencil pepper piano pickle pigeon pillow pine planet plum pocket pony poppy
potato prairie pretzel puddle puffin pumpkin puzzle quartz quilt rabbit radish raven ribbon river robin rocket
rosemary saddle saffron salmon sandal satin seagull shadow silver sparrow spinach spiral sponge spruce squirrel
stable sugar summer sunset swallow tablet teapot temple thimble thistle thunder ticket tiger timber toffee tomato
trumpet tulip tunnel turnip turtle umbrella valley vanilla velvet violet violin waffle walnut walrus water whistle
willow window winter yellow yogurt zebra zipper
"""
WORDS = tuple(_TEXT.split())


def draw() -> str:
    """Two different words with a space between."""
    return " ".join(secrets.SystemRandom().sample(WORDS, 2))

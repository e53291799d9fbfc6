# Plants as line drawings.

drawn-title = Drawn from what is known of it
drawn-twins-title = What differs, drawn

# What is drawn, as captions name it, and from where it is seen.
drawn-whole = Whole plant
    .view = whole plant, from the side
drawn-sign-alone = One sign
    .view = one sign, enlarged
drawn-leaf = Leaf
    .view = leaf, from above
drawn-stand = How the leaves stand
    .view = leaves on their stem or out of the ground, from the side
drawn-twig = Twig
    .view = end of a twig
drawn-needle = Needle
    .view = one needle, enlarged, upright on its twig
drawn-leaf-cut = Leaf cut across
    .view = narrow leaf cut across, upper side on top
drawn-stem = Stem cut across
    .view = piece of stem, cut end on top
drawn-flowers = How the flowers stand
    .view = flowers on their stalks, from the side, a ring for each flower
drawn-fruit = Fruit
    .view = fruit, from the side

drawn-figure-title = { $plant }: { $part }
drawn-describes = { $plant }, { $view } — { $signs }. Schematic, not to scale.
drawn-sign = { $character }: { $state }
drawn-sign-or = { $character }: { $state } (so drawn; as a rule also { $others })
drawn-sign-number = { $character }: { $number } here
drawn-caption = , schematic, not to scale.
drawn-remembered = From memory: { $characters }.
drawn-untold = Dashed, as it is not told: { $characters }.
drawn-differs = { $number } { $character }
drawn-differs-caption = { $number }: { $character } — { $state }.

drawn-plate-title = Signs of plants, drawn
drawn-plate-says = Each drawing shows one state of a character. None is true to scale, and none is evidence: go by the plant in hand.
drawn-plate-describes = { $character }: { $state }. Schematic, not to scale.

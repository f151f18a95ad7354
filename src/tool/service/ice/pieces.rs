//! Pieces: what a size weighs, what size a weight is, and how many a block or a bag gives.

use super::{
    BAG, HEAP, IceForm, KnownBy, LONG, PIECE, SAW, SIDE, SPEAR, SPEAR_SIDE, SPHERE, Shape, Source, THICK, WEIGHT, WIDE,
    mm, weight,
};
use crate::craft::ice::{Piece, crushed, heap, pieces_in, together};
use crate::quantity::{Density, Mass};
use crate::screen::pad::Keys;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Problem, Strip, Tone};
use crate::text;

/// A piece that is known: what it weighs, its size in words, and its edges; none of crushed ice.
struct One {
    mass: Mass,
    size: Figure,
    piece: Option<Piece>,
}

impl IceForm {
    fn shape(&self) -> Shape {
        Shape::read(&self.shape)
    }

    fn is_weighed(&self) -> bool {
        KnownBy::read(&self.known_by) == KnownBy::Weight
    }

    fn is_cut(&self) -> bool {
        Source::read(&self.source) == Source::Block
    }

    pub(super) fn layout_pieces(&self) -> Vec<Block> {
        let (shape, is_weighed) = (self.shape(), self.is_weighed());
        let mut blocks = vec![
            Block::chips::<Shape>("shape", "Shape", false),
            Block::chips::<KnownBy>("known_by", "What is known", false),
        ];
        if shape == Shape::Spear {
            blocks.push(Block::amount(SPEAR_SIDE, "Side, mm", Keys::Count));
        }
        blocks.push(match shape {
            _ if is_weighed => Block::amount(WEIGHT, "Weighs", Keys::Weight),
            Shape::Cube => Block::amount(SIDE, "Side, mm", Keys::Count),
            Shape::Spear => Block::amount(SPEAR, "Long, mm", Keys::Count),
            Shape::Sphere => Block::amount(SPHERE, "Across, mm", Keys::Count),
            Shape::Crushed => Block::amount(HEAP, "As it lies", Keys::Pour),
        });
        blocks.push(Block::chips::<Source>("source", "Where from", false));
        match self.is_cut() {
            true => blocks.extend([
                Block::amount(LONG, "Block, long, mm", Keys::Count),
                Block::amount(WIDE, "Block, wide, mm", Keys::Count),
                Block::amount(THICK, "Block, thick, mm", Keys::Count),
                self.cut_field(),
            ]),
            false => blocks.push(Block::amount(BAG, "A bag holds", Keys::Weight)),
        }
        blocks
    }

    /// The piece that is typed.
    fn one(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<One> {
        let (shape, is_weighed) = (self.shape(), self.is_weighed());
        if shape == Shape::Crushed {
            let (mass, volume) = match is_weighed {
                true => {
                    let mass = bench.mass(WEIGHT, &self.weight, problems)?;
                    (mass, heap(mass)?)
                }
                false => {
                    let volume = bench.volume(HEAP, &self.heap, problems)?;
                    (crushed(volume)?, volume)
                }
            };
            let Figure { value, unit } = text::litres_or_ml(volume, bench.decimal);
            return Some(One { mass, size: Figure::new(value, format!("{unit}, as it lies")), piece: None });
        }
        let mass = if is_weighed { bench.mass(WEIGHT, &self.weight, problems) } else { None };
        let mut length = |field, text: &str| bench.length(field, text, PIECE, problems);
        let (piece, of) = match shape {
            Shape::Spear => {
                let side = length(SPEAR_SIDE, &self.spear_side);
                let piece = match is_weighed {
                    true => Piece::spear(mass?, side?),
                    false => {
                        let long = length(SPEAR, &self.spear);
                        Piece::Block([side?, side?, long?])
                    }
                };
                (piece, "mm long")
            }
            Shape::Sphere if is_weighed => (Piece::sphere(mass?), "mm across"),
            Shape::Sphere => (Piece::Sphere(length(SPHERE, &self.sphere)?), "mm across"),
            _ if is_weighed => (Piece::cube(mass?), "mm a side"),
            _ => (Piece::Block([length(SIDE, &self.side)?; 3]), "mm a side"),
        };
        let size = piece.edges()[2];
        if !(PIECE.0..=PIECE.1).contains(&size) {
            problems.push(Problem::new(WEIGHT, format!("That comes to {}. Check the weight.", mm(size, bench))));
            return None;
        }
        Some(One { mass: piece.mass()?, size: Figure::new(mm(size, bench).value, of), piece: Some(piece) })
    }

    pub(super) fn pieces(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let one = self.one(bench, &mut answer.problems);
        let come = one.as_ref().and_then(|one| match self.is_cut() {
            true => self.out_of_block(one, &mut answer, bench),
            false => {
                let bag = bench.mass(BAG, &self.bag, &mut answer.problems)?;
                Some((pieces_in(bag, one.mass), bag, "bag"))
            }
        });
        let Some(one) = one.filter(|_| answer.problems.is_empty()) else {
            return answer.without_answer("Type a size, or what it weighs.");
        };
        let (answered, given) = match self.is_weighed() {
            true => (one.size, weight(one.mass, bench)),
            false => (weight(one.mass, bench), one.size),
        };
        answer.strip = Strip {
            figures: vec![answered],
            also: match come {
                None => given.to_string(),
                Some((0, _, from)) => format!("None out of a {from}: it is larger"),
                Some((count, all, from)) => {
                    let count = text::count(f64::from(count), bench.decimal);
                    format!("{count} out of a {from} of {}", weight(all, bench))
                }
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "Ice and water";
        if one.piece.is_some() {
            let water = one.mass.volume_at(Density::WATER);
            answer.explained(
                "water for a mould",
                text::millilitres(water, bench.decimal),
                "At 20 °C. Frozen it takes 9 % more room: leave that free.",
            );
            answer.cautions.push("Water grows by 9 % as it freezes: a glass or a bottle as a mould bursts.".into());
        }
        let fills = match one.piece {
            Some(_) => "",
            None => " Crushed ice fills 55 % of its heap: rule of thumb.",
        };
        answer.remarks.push(format!("Ice at 0 °C: 0.9167 g/ml, IAPWS.{fills}"));
        answer
    }

    /// How many a block gives, what it weighs, and what it is called.
    fn out_of_block(&self, one: &One, answer: &mut Answer, bench: &Bench) -> Option<(u32, Mass, &'static str)> {
        let edges = self.edges(bench, &mut answer.problems);
        let cut = self.cut(one.piece, bench, &mut answer.problems);
        let (edges, cut) = (edges?, cut?);
        let block = Piece::Block(edges).mass()?;
        let Some(piece) = one.piece else { return Some((pieces_in(block, one.mass), block, "block")) };
        let count = together(piece.cut_from(edges, cut));
        let lost = (1.0 - f64::from(count) * one.mass.g() / block.g()).max(0.0);
        if count > 0 {
            answer.cell("lost to cuts and trim", Figure::new(text::plain(lost * 100.0, 1, bench.decimal), "%"));
            answer.cautions.push(SAW.into());
            answer
                .remarks
                .push("All laid the same way, the best of six: laid otherwise it may give a few more.".into());
        }
        Some((count, block, "block"))
    }
}

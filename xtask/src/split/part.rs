//! The two parts of a module, written.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

use anyhow::Result;
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{
    BlockType, CodeSection, ConstExpr, ElementSection, Elements, ExportKind, ExportSection, Function, FunctionSection,
    GlobalSection, GlobalType, ImportSection, RawSection, SectionId, StartSection, TableSection, ValType,
};
use wasmparser::{Parser, Payload, TypeRef};

use super::FIRST;
use super::read::Module;

/// Who goes where.
pub(super) struct Split<'m, 'a> {
    module: &'m Module<'a>,
    first: &'m BTreeSet<u32>,
    /// The function that has the rest fetched.
    fetch: u32,
    /// Those of the rest that the first part calls, or holds in its table: each with its place in that.
    stubs: BTreeMap<u32, u32>,
    /// How many places the table has.
    places: u32,
    /// Those that the rest calls and does not hold, in order.
    given: Vec<u32>,
}

/// The number of each function in a part, where it is there.
struct Numbers(Vec<Option<u32>>);

/// A function is called in a part where it is not.
#[derive(Debug)]
struct NotThere(u32);

impl fmt::Display for NotThere {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "function {} is called where it is not", self.0)
    }
}

impl std::error::Error for NotThere {}

impl Reencode for Numbers {
    type Error = NotThere;

    fn function_index(&mut self, function: u32) -> Result<u32, Error<NotThere>> {
        let number = self.0.get(function as usize).copied().flatten();
        number.ok_or(Error::UserError(NotThere(function)))
    }
}

impl<'m, 'a> Split<'m, 'a> {
    pub(super) fn of(module: &'m Module<'a>, first: &'m BTreeSet<u32>, fetch: u32) -> Split<'m, 'a> {
        let is_later = |function: &u32| *function >= module.imported && !first.contains(function);
        let calls = |from: &dyn Fn(&u32) -> bool| -> BTreeSet<u32> {
            let bodies = module.defined().filter(from).filter_map(|function| module.body(function));
            bodies.flat_map(|(_, called)| called).copied().collect()
        };
        let mut places = module.tables.first().map_or(0, |table| u32::try_from(table.initial).unwrap_or(u32::MAX));
        let mut stubs: BTreeMap<u32, u32> = module
            .table
            .iter()
            .filter(|(_, function)| is_later(function))
            .map(|(place, function)| (*function, *place))
            .collect();
        for function in calls(&|from| first.contains(from)).into_iter().filter(is_later) {
            stubs.entry(function).or_insert_with(|| {
                places += 1;
                places - 1
            });
        }
        let given = calls(&is_later).into_iter().filter(|function| !is_later(function)).collect();
        Split { module, first, fetch, stubs, places, given }
    }

    /// Functions of the rest.
    fn later(&self) -> impl Iterator<Item = u32> {
        self.module.defined().filter(|function| !self.first.contains(function))
    }

    /// Whether the first part has a function, in full or as a stub.
    fn stands(&self, function: u32) -> bool {
        self.first.contains(&function) || self.stubs.contains_key(&function)
    }

    /// The global that says whether the rest is here: behind those that there are.
    fn is_here(&self) -> u32 {
        u32::try_from(self.module.globals.len()).unwrap_or(u32::MAX)
    }

    /// The first part: the module as it was, less what comes later.
    pub(super) fn first(&self) -> Result<Vec<u8>> {
        let mut numbers = Numbers((0..self.module.imported).map(Some).collect());
        let mut next = self.module.imported..;
        numbers.0.extend(self.module.defined().map(|function| if self.stands(function) { next.next() } else { None }));
        let mut part = wasm_encoder::Module::new();
        for payload in Parser::new(0).parse_all(self.module.wasm) {
            let payload = payload?;
            match payload {
                Payload::FunctionSection(_) => {
                    let mut functions = FunctionSection::new();
                    for function in self.module.defined().filter(|function| self.stands(*function)) {
                        functions.function(self.module.type_of[function as usize]);
                    }
                    part.section(&functions);
                }
                Payload::TableSection(_) => {
                    let mut tables = TableSection::new();
                    for (at, ty) in self.tables(&mut numbers)?.into_iter().enumerate() {
                        let places = if at == 0 { self.places.into() } else { ty.minimum };
                        let most = ty.maximum.map(|most| most.max(places));
                        tables.table(wasm_encoder::TableType { minimum: places, maximum: most, ..ty });
                    }
                    part.section(&tables);
                }
                Payload::GlobalSection(section) => {
                    let mut globals = GlobalSection::new();
                    numbers.parse_global_section(&mut globals, section)?;
                    globals.global(FLAG, &ConstExpr::i32_const(0));
                    part.section(&globals);
                }
                Payload::ExportSection(section) => {
                    let mut exports = ExportSection::new();
                    numbers.parse_export_section(&mut exports, section)?;
                    for (kind, letter, count) in self.kinds() {
                        for index in 0..count {
                            let number = if kind == ExportKind::Func {
                                numbers.function_index(self.given[index as usize])?
                            } else {
                                index
                            };
                            exports.export(&format!("{letter}{index:x}"), kind, number);
                        }
                    }
                    part.section(&exports);
                }
                Payload::StartSection { func, .. } => {
                    part.section(&StartSection { function_index: numbers.function_index(func)? });
                }
                Payload::ElementSection(section) => {
                    let mut elements = ElementSection::new();
                    numbers.parse_element_section(&mut elements, section)?;
                    part.section(&elements);
                }
                Payload::CodeSectionStart { .. } => {
                    part.section(&self.first_code(&mut numbers)?);
                }
                // Each is in the code already; names and notes are for tools.
                Payload::CodeSectionEntry(_) | Payload::CustomSection(_) => {}
                other => {
                    if let Some((id, range)) = other.as_section() {
                        part.section(&RawSection { id, data: self.module.bytes(&range)? });
                    }
                }
            }
        }
        Ok(part.finish())
    }

    fn first_code(&self, numbers: &mut Numbers) -> Result<CodeSection> {
        let mut code = CodeSection::new();
        for function in self.module.defined() {
            if let (Some((body, _)), true) = (self.module.body(function), self.first.contains(&function)) {
                numbers.parse_function_body(&mut code, body.clone())?;
            } else if let Some(place) = self.stubs.get(&function) {
                let fetch = numbers.function_index(self.fetch)?;
                code.function(&self.stub(self.module.type_of[function as usize], *place, fetch)?);
            }
        }
        Ok(code)
    }

    /// What stands in the place of a function that comes later.
    fn stub(&self, ty: u32, place: u32, fetch: u32) -> Result<Function> {
        let mut stub = Function::new([]);
        let mut code = stub.instructions();
        code.block(BlockType::Empty);
        code.global_get(self.is_here()).br_if(0);
        code.call(fetch).global_get(self.is_here()).br_if(0);
        code.unreachable().end();
        for parameter in 0..u32::try_from(self.module.types[ty as usize].params().len())? {
            code.local_get(parameter);
        }
        code.i32_const(place.cast_signed()).call_indirect(0, ty).end();
        Ok(stub)
    }

    /// The rest: what it holds, and where in the table that goes.
    pub(super) fn rest(&self) -> Result<Vec<u8>> {
        let held: Vec<u32> = self.later().collect();
        let mut numbers = Numbers(vec![None; self.module.type_of.len()]);
        for (number, function) in (0..).zip(self.given.iter().chain(&held)) {
            numbers.0[*function as usize] = Some(number);
        }
        let mut part = wasm_encoder::Module::new();
        for payload in Parser::new(0).parse_all(self.module.wasm) {
            if let Payload::TypeSection(section) = payload? {
                let data = self.module.bytes(&section.range())?;
                part.section(&RawSection { id: SectionId::Type as u8, data });
            }
        }
        part.section(&self.imports(&mut numbers)?);
        let mut functions = FunctionSection::new();
        for function in held.iter().chain([&self.fetch]) {
            functions.function(self.module.type_of[*function as usize]);
        }
        part.section(&functions);
        // As it comes it says that it is here. That is of the type of what fetches it: nothing goes in, nothing comes out.
        part.section(&StartSection { function_index: u32::try_from(self.given.len() + held.len())? });
        part.section(&self.places(&mut numbers)?);
        let mut code = CodeSection::new();
        for (body, _) in held.iter().filter_map(|function| self.module.body(*function)) {
            numbers.parse_function_body(&mut code, body.clone())?;
        }
        let mut start = Function::new([]);
        start.instructions().i32_const(1).global_set(self.is_here()).end();
        code.function(&start);
        part.section(&code);
        Ok(part.finish())
    }

    fn imports(&self, numbers: &mut Numbers) -> Result<ImportSection> {
        let mut imports = ImportSection::new();
        let mut tables = self.tables(numbers)?;
        if let Some(table) = tables.first_mut() {
            table.minimum = self.places.into();
            table.maximum = table.maximum.map(|most| most.max(table.minimum));
        }
        for (kind, letter, count) in self.kinds() {
            for index in 0..count {
                let at = index as usize;
                let ty = match kind {
                    ExportKind::Memory => numbers.entity_type(TypeRef::Memory(self.module.memories[at]))?,
                    ExportKind::Table => tables[at].into(),
                    ExportKind::Global if index == self.is_here() => FLAG.into(),
                    ExportKind::Global => numbers.entity_type(TypeRef::Global(self.module.globals[at]))?,
                    _ => numbers.entity_type(TypeRef::Func(self.module.type_of[self.given[at] as usize]))?,
                };
                imports.import(FIRST, &format!("{letter}{index:x}"), ty);
            }
        }
        Ok(imports)
    }

    /// What the first part gives to the rest: of each kind, by what letter and how many.
    fn kinds(&self) -> [(ExportKind, char, u32); 4] {
        let count = |many: usize| u32::try_from(many).unwrap_or(u32::MAX);
        [
            (ExportKind::Memory, 'm', count(self.module.memories.len())),
            (ExportKind::Table, 't', count(self.module.tables.len())),
            (ExportKind::Global, 'g', self.is_here() + 1),
            (ExportKind::Func, 'f', count(self.given.len())),
        ]
    }

    fn tables(&self, numbers: &mut Numbers) -> Result<Vec<wasm_encoder::TableType>> {
        self.module.tables.iter().map(|table| Ok(numbers.table_type(*table)?)).collect()
    }

    /// Where in the table each of the rest stands: in place of its stubs.
    fn places(&self, numbers: &mut Numbers) -> Result<ElementSection> {
        let in_table = self.module.table.iter().copied().filter(|(_, function)| self.stubs.contains_key(function));
        let called = self.stubs.iter().map(|(function, place)| (*place, *function));
        let placed: BTreeMap<u32, u32> = in_table.chain(called).collect();
        let mut runs: Vec<(u32, Vec<u32>)> = Vec::new();
        for (place, function) in placed {
            let number = numbers.function_index(function)?;
            match runs.last_mut() {
                Some((start, run)) if *start as usize + run.len() == place as usize => run.push(number),
                _ => runs.push((place, vec![number])),
            }
        }
        let mut elements = ElementSection::new();
        for (start, run) in runs {
            elements.active(None, &ConstExpr::i32_const(start.cast_signed()), Elements::Functions(run.into()));
        }
        Ok(elements)
    }
}

/// Whether the rest is here: 0 or 1.
const FLAG: GlobalType = GlobalType { val_type: ValType::I32, mutable: true, shared: false };

//! A module as far as it matters who calls whom.

use std::collections::BTreeSet;
use std::ops::Range;

use anyhow::{Context, Result, bail, ensure};
use wasmparser::{
    ConstExpr, ElementItems, ElementKind, ExternalKind, FuncType, FunctionBody, GlobalType, KnownCustom, MemoryType,
    Name, Operator, Parser, Payload, TableType, TypeRef,
};

/// What there is in a module. Functions, tables and globals are told by number, the imported ones first.
pub(super) struct Module<'a> {
    pub(super) wasm: &'a [u8],
    pub(super) types: Vec<FuncType>,
    /// How many functions are imported.
    pub(super) imported: u32,
    /// The type of each function.
    pub(super) type_of: Vec<u32>,
    /// The name of each function, as Rust writes it.
    pub(super) names: Vec<String>,
    /// Those that are not imported, in order, with those that each calls.
    pub(super) bodies: Vec<(FunctionBody<'a>, BTreeSet<u32>)>,
    /// What stands where in the first table, which functions are called through.
    pub(super) table: Vec<(u32, u32)>,
    /// What the page may call, and what starts it.
    pub(super) entries: BTreeSet<u32>,
    pub(super) tables: Vec<TableType>,
    pub(super) globals: Vec<GlobalType>,
    pub(super) memories: Vec<MemoryType>,
}

impl<'a> Module<'a> {
    pub(super) fn read(wasm: &'a [u8]) -> Result<Module<'a>> {
        let mut module = Module {
            wasm,
            types: Vec::new(),
            imported: 0,
            type_of: Vec::new(),
            names: Vec::new(),
            bodies: Vec::new(),
            table: Vec::new(),
            entries: BTreeSet::new(),
            tables: Vec::new(),
            globals: Vec::new(),
            memories: Vec::new(),
        };
        for payload in Parser::new(0).parse_all(wasm) {
            module.take(payload?)?;
        }
        Ok(module)
    }

    fn take(&mut self, payload: Payload<'a>) -> Result<()> {
        match payload {
            Payload::TypeSection(section) => {
                self.types = section.into_iter_err_on_gc_types().collect::<Result<_, _>>()?;
            }
            Payload::ImportSection(section) => {
                for import in section.into_imports() {
                    match import?.ty {
                        TypeRef::Func(ty) => self.type_of.push(ty),
                        // The rest, read again, has these from the first part; of the app's own wasm the page brings functions alone.
                        TypeRef::Table(ty) => self.tables.push(ty),
                        TypeRef::Memory(ty) => self.memories.push(ty),
                        TypeRef::Global(ty) => self.globals.push(ty),
                        other => bail!("{other:?} is imported: that is not known here"),
                    }
                }
                self.imported = u32::try_from(self.type_of.len())?;
            }
            Payload::FunctionSection(section) => {
                for ty in section {
                    self.type_of.push(ty?);
                }
                self.names = vec![String::new(); self.type_of.len()];
            }
            Payload::TableSection(section) => {
                for table in section {
                    self.tables.push(table?.ty);
                }
            }
            Payload::MemorySection(section) => self.memories = section.into_iter().collect::<Result<_, _>>()?,
            Payload::GlobalSection(section) => {
                for global in section {
                    self.globals.push(global?.ty);
                }
            }
            Payload::ExportSection(section) => {
                for export in section {
                    let export = export?;
                    if export.kind == ExternalKind::Func {
                        self.entries.insert(export.index);
                    }
                }
            }
            Payload::StartSection { func, .. } => {
                self.entries.insert(func);
            }
            Payload::ElementSection(section) => {
                for element in section {
                    let element = element?;
                    if let (
                        ElementKind::Active { table_index: None | Some(0), offset_expr },
                        ElementItems::Functions(items),
                    ) = (element.kind, element.items)
                    {
                        for (slot, function) in (constant(&offset_expr)?..).zip(items) {
                            self.table.push((slot, function?));
                        }
                    }
                }
            }
            Payload::CodeSectionEntry(body) => {
                let called = called(&body)?;
                self.bodies.push((body, called));
            }
            Payload::CustomSection(section) => {
                if let KnownCustom::Name(subsections) = section.as_known() {
                    for subsection in subsections {
                        let Name::Function(functions) = subsection? else { continue };
                        for naming in functions {
                            let naming = naming?;
                            let name = format!("{:#}", rustc_demangle::demangle(naming.name));
                            *self.names.get_mut(naming.index as usize).context("a name of no function")? = name;
                        }
                    }
                }
            }
            _ => {}
        }
        Ok(())
    }

    /// What stands in the file there.
    pub(super) fn bytes(&self, range: &Range<u64>) -> Result<&'a [u8]> {
        let range = usize::try_from(range.start)?..usize::try_from(range.end)?;
        self.wasm.get(range).context("a section ends behind the file")
    }

    /// The functions that are not imported.
    pub(super) fn defined(&self) -> impl Iterator<Item = u32> {
        self.imported..self.imported + u32::try_from(self.bodies.len()).unwrap_or(u32::MAX)
    }

    /// The body of a function that is not imported, and those that it calls.
    pub(super) fn body(&self, function: u32) -> Option<&(FunctionBody<'a>, BTreeSet<u32>)> {
        self.bodies.get(function.checked_sub(self.imported)? as usize)
    }

    /// The functions that the page, or a call through the table, comes to without any of those that come `later`.
    pub(super) fn reached(&self, later: &BTreeSet<u32>) -> BTreeSet<u32> {
        let in_table = self.table.iter().map(|(_, function)| *function);
        let mut open: Vec<u32> = self.entries.iter().copied().chain(in_table).collect();
        let mut reached = BTreeSet::new();
        while let Some(function) = open.pop() {
            if let Some((_, called)) = self.body(function)
                && !later.contains(&function)
                && reached.insert(function)
            {
                open.extend(called);
            }
        }
        reached
    }
}

fn constant(expression: &ConstExpr<'_>) -> Result<u32> {
    match expression.get_operators_reader().read()? {
        Operator::I32Const { value } => Ok(value.cast_unsigned()),
        other => bail!("the place in a table is {other:?}: a number is meant to be"),
    }
}

fn called(body: &FunctionBody<'_>) -> Result<BTreeSet<u32>> {
    let mut called = BTreeSet::new();
    for operator in body.get_operators_reader()? {
        match operator? {
            Operator::Call { function_index } | Operator::RefFunc { function_index } => {
                called.insert(function_index);
            }
            Operator::ReturnCall { .. } => ensure!(false, "a tail call: not known here"),
            _ => {}
        }
    }
    Ok(called)
}

//! What ingredients are called in German, French, Spanish and Italian, and how those languages put names together.

/// Keys of the library, and names for what they mean, as [`folded`]. Where a name means two things to two bars, both keys:
/// it is asked about. Words that mean something else in a bar that writes English are left out.
const NAMES: [(&str, &str); 75] = [
    ("london-dry-gin", "ginebra"),
    ("vodka", "wodka"),
    ("light-rum", "weisser rum,rhum blanc,ron blanco,rum bianco"),
    ("aged-rum", "ron,rhum,brauner rum,ron anejo,rhum vieux"),
    ("cane-juice-rum", "rhum agricole"),
    ("grape-brandy", "weinbrand,grappa"),
    ("spirit-40", "eau de vie,obstbrand,obstler,aguardiente,acquavite"),
    ("liqueur,spirit-40", "schnapps,schnaps"),
    ("liqueur", "likor,licor,liquore"),
    ("orange-liqueur", "orangenlikor"),
    ("cherry-liqueur", "kirschlikor"),
    ("peach-liqueur", "pfirsichlikor,creme de peche"),
    ("almond-liqueur", "mandellikor"),
    ("coffee-liqueur", "kaffeelikor,licor de cafe,liqueur de cafe"),
    ("spirit-40,liqueur", "liquor"),
    ("bitter-red-aperitif,aromatic-bitters", "bitter"),
    ("orange-bitters", "orange bitter"),
    ("dry-vermouth", "trockener wermut,wermut trocken,vermouth sec,vermut seco,vermouth secco"),
    ("sweet-vermouth", "wermut,roter wermut,vermut,vermut rojo"),
    ("white-wine", "weisswein,vin blanc,vino blanco,vino bianco"),
    ("red-wine", "rotwein,vin rouge,vino tinto,vino rosso"),
    ("sparkling-wine", "sekt,schaumwein,vin mousseux,cremant,cava,spumante"),
    ("ruby-port", "portwein,porto,oporto"),
    ("fino-sherry", "jerez"),
    ("lager", "bier,biere,cerveza,birra"),
    ("cider", "apfelwein,cidre,sidra"),
    ("lemon-juice", "zitronensaft,zitrone,zitronen,citron,citrons,zumo de limon,limone,limoni"),
    ("lime-juice", "limettensaft,limette,limetten,citron vert,citrons verts,lima,limas"),
    ("lime-juice,lemon-juice", "limon,limones,jugo de limon,limonensaft"),
    ("orange-juice", "orangensaft,orangen,naranja,naranjas,arancia,arance"),
    ("grapefruit-juice", "grapefruitsaft,pamplemousse,toronja,pompelmo"),
    ("pineapple-juice", "ananassaft,ananas,pina"),
    ("apple-juice", "apfelsaft,apfel,pomme,pommes,manzana,mela"),
    ("pear-juice", "birnensaft,birne,birnen,poire,pera"),
    ("cranberry-juice", "cranberrysaft"),
    ("pomegranate-juice", "granatapfelsaft,granada,melograno"),
    ("grape-juice", "traubensaft,uva"),
    ("tomato-juice", "tomatensaft,tomate,pomodoro"),
    ("passion-fruit", "maracuja,maracuya,fruit de la passion,frutto della passione"),
    ("raspberry-puree", "himbeere,himbeeren,frambuesa,frambuesas,lampone,lamponi"),
    ("juice", "saft,fruchtsaft,jus,zumo,jugo,succo"),
    ("vinegar", "essig,weinessig,vinaigre,vinagre,aceto"),
    ("simple-syrup", "zuckersirup,lauterzucker,sirop,sirope,jarabe,almibar,sciroppo"),
    ("grenadine", "granadina,granatina"),
    ("orgeat", "mandelsirup,orzata"),
    ("ginger-syrup", "ingwersirup,sirop de gingembre,jarabe de jengibre,sciroppo di zenzero"),
    ("raspberry-syrup", "himbeersirup"),
    ("honey", "honig,miel,miele"),
    ("honey-syrup", "honigsirup,sirop de miel,jarabe de miel,sciroppo di miele"),
    ("agave-syrup", "agavensirup,agavendicksaft"),
    ("maple-syrup", "ahornsirup,sirop d'erable,jarabe de arce,sciroppo d'acero"),
    ("whole-milk", "milch,vollmilch,lait,lait entier,leche,leche entera,latte intero"),
    ("whole-milk,espresso", "latte"),
    ("skim-milk", "magermilch,lait ecreme,leche desnatada,latte scremato"),
    ("cream", "sahne,schlagsahne,rahm,creme,creme liquide,nata,nata liquida,panna"),
    ("coconut-cream", "creme de coco,crema de coco,crema di cocco"),
    ("yoghurt", "joghurt,yaourt,yogur"),
    (
        "egg-white",
        "eiweiss,eiklar,blanc d'oeuf,blancs d'oeuf,blancs d'oeufs,clara,claras,clara de huevo,claras de huevo,albume,albumi,albume d'uovo",
    ),
    ("whole-egg", "ei,eier,oeuf,oeufs,huevo,huevos,uovo,uova"),
    (
        "egg-yolk",
        "eigelb,dotter,jaune d'oeuf,jaunes d'oeuf,jaunes d'oeufs,yema,yemas,yema de huevo,tuorlo,tuorli,tuorlo d'uovo",
    ),
    (
        "soda-water",
        "sodawasser,mineralwasser,sprudel,eau gazeuse,eau petillante,agua con gas,acqua frizzante,acqua gassata",
    ),
    ("tonic", "tonicwasser,tonic wasser,eau tonique,tonica"),
    ("sweet-soda", "limonade,limonada,limonata,gaseosa"),
    ("espresso", "expreso"),
    ("cold-brew", "kaffee,cafe,caffe"),
    ("black-tea", "tee,schwarztee,schwarzer tee,the noir,te negro,te nero"),
    ("green-tea", "gruner tee,the vert,te verde"),
    ("sugar", "zucker,sucre,azucar,zucchero"),
    ("citric-acid", "zitronensaure,citronensaure,acide citrique,acido citrico"),
    ("malic-acid", "apfelsaure,acide malique,acido malico"),
    ("tartaric-acid", "weinsaure,acide tartrique,acido tartarico"),
    ("salt", "salz,meersalz,sel,sal,sale"),
    ("saline", "salzlosung,solution saline,solucion salina,soluzione salina"),
    ("water", "wasser,eau,agua,acqua"),
    ("ice", "eiswurfel,glacons,hielo,ghiaccio"),
];

/// The key of what is called so abroad, to the letter.
#[must_use]
pub fn abroad(name: &str) -> Option<&'static str> {
    let folded = folded(name.trim());
    names().find(|(name, _)| *name == folded).map(|(_, key)| key)
}

/// Every name with its key; of two keys, both.
pub(super) fn names() -> impl Iterator<Item = (&'static str, &'static str)> {
    NAMES.into_iter().flat_map(|(key, names)| names.split(',').map(move |name| (name, key)))
}

/// Nouns that stand first, before "de" and the like, and the key of what such a thing is where no more is known of it; a
/// milk or a water of something is no milk and no water.
const HEADS: [(&str, &str); 22] = [
    ("sirop", "simple-syrup"),
    ("sirope", "simple-syrup"),
    ("jarabe", "simple-syrup"),
    ("sciroppo", "simple-syrup"),
    ("jus", "juice"),
    ("zumo", "juice"),
    ("jugo", "juice"),
    ("succo", "juice"),
    ("liqueur", "liqueur"),
    ("licor", "liqueur"),
    ("liquore", "liqueur"),
    ("creme", ""),
    ("crema", ""),
    ("eau", ""),
    ("agua", ""),
    ("acqua", ""),
    ("lait", ""),
    ("leche", ""),
    ("latte", ""),
    ("sel", ""),
    ("sal", ""),
    ("sale", ""),
];

/// What stands between the noun and what it is of.
const OF: [&str; 10] = ["de ", "d'", "di ", "du ", "del ", "al ", "alla ", "all'", "a ", "au "];

/// The noun of a folded name that puts it first, as the key of what it is in general, and what it is of: "sirop de sucre".
pub(super) fn of(folded: &str) -> Option<(&'static str, &str)> {
    let (first, rest) = folded.trim_start().split_once(' ')?;
    let (_, key) = HEADS.iter().find(|(noun, _)| *noun == first)?;
    let of = OF.iter().find_map(|of| rest.strip_prefix(of))?;
    Some((key, of.trim()))
}

/// Words that may follow a name and change nothing of it.
const FRESH: [&str; 7] = [" frais", " fraiche", " presse", " fresco", " fresca", " exprimido", " spremuto"];

/// A folded name without a word for fresh behind it.
pub(super) fn without_fresh(folded: &str) -> &str {
    FRESH.iter().find_map(|fresh| folded.strip_suffix(fresh)).unwrap_or(folded)
}

/// A letter without its accent, in lower case.
pub(super) const fn plain(c: char) -> char {
    match c {
        'à' | 'á' | 'â' | 'ä' | 'À' | 'Á' | 'Â' | 'Ä' => 'a',
        'è' | 'é' | 'ê' | 'È' | 'É' | 'Ê' => 'e',
        'ì' | 'í' | 'î' | 'ï' | 'Í' | 'Î' => 'i',
        'ò' | 'ó' | 'ô' | 'ö' | 'Ó' | 'Ô' | 'Ö' => 'o',
        'ù' | 'ú' | 'û' | 'ü' | 'Ú' | 'Ü' => 'u',
        'ç' | 'Ç' => 'c',
        'ñ' | 'Ñ' => 'n',
        '’' => '\'',
        c => c.to_ascii_lowercase(),
    }
}

/// A name in lower case and without accents: "Blanc d'Œuf" as "blanc d'oeuf", "Eiweiß" as "eiweiss".
#[must_use]
pub fn folded(name: &str) -> String {
    let mut folded = String::with_capacity(name.len());
    for c in name.chars() {
        match c {
            'œ' | 'Œ' => folded.push_str("oe"),
            'ß' => folded.push_str("ss"),
            c => folded.push(plain(c)),
        }
    }
    folded
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{ingredient, named};

    #[test]
    fn every_name_is_folded_and_means_its_own_row() {
        for (name, keys) in names() {
            assert_eq!(folded(name), name);
            assert!(keys.split(',').all(|key| ingredient(key).is_some()), "{keys}");
            let expected = if keys.contains(',') { None } else { Some(keys) };
            assert_eq!(named(name).map(|found| found.key), expected, "{name}");
        }
        for (noun, key) in HEADS {
            assert!(key.is_empty() || ingredient(key).is_some(), "{noun}");
        }
    }

    #[test]
    fn no_name_is_twice_in_the_list() {
        let mut all: Vec<&str> = names().map(|(name, _)| name).collect();
        all.sort_unstable();
        assert!(all.windows(2).all(|pair| pair[0] != pair[1]));
    }
}

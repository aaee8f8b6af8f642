//! The names under which works are cited.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::result::plain;

plain! { Word: Source; }

/// Declares every source with its key.
macro_rules! sources {
    ($($source:ident = $key:literal,)+) => {
        /// A work that is cited, written as its key in tables and results.
        ///
        /// What it is and how much of it was read, its [`Work`](super::Work) tells:
        /// [`Source::work`].
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
        )]
        pub enum Source {
            $(
                #[doc = concat!("`", $key, "`.")]
                #[serde(rename = $key)]
                $source,
            )+
        }

        impl Source {
            /// Every source, sorted by key.
            pub const ALL: &'static [Self] = &[$(Self::$source),+];

            /// Author and year in snake case, or the number of a standard or rule.
            pub const fn key(self) -> &'static str {
                match self {
                    $(Self::$source => $key,)+
                }
            }
        }
    };
}

sources! {
    Abdulgawad2023 = "abdulgawad_2023",
    AcidNitrospira = "acid_nitrospira",
    Apha4500O = "apha_4500_o",
    AsceEwri2_06 = "asce_ewri_2_06",
    AstmC144 = "astm_c144",
    AstmC33 = "astm_c33",
    AstmE11 = "astm_e11",
    AstmE3401 = "astm_e3401",
    AwwaB100 = "awwa_b100",
    BagchiAquaria = "bagchi_aquaria",
    Baird2004 = "baird_2004",
    Barko1982 = "barko_1982",
    BarkoSmart1981 = "barko_smart_1981",
    Bartleson2014 = "bartleson_2014",
    BensonKrause1984 = "benson_krause_1984",
    Best1986 = "best_1986",
    BosworthThibodeaux1990 = "bosworth_thibodeaux_1990",
    Boudreau1996 = "boudreau_1996",
    Boudreau1997 = "boudreau_1997",
    Bouldin1968 = "bouldin_1968",
    Bowes1985 = "bowes_1985",
    Boyd1974 = "boyd_1974",
    Buck1981 = "buck_1981",
    Burley2020 = "burley_2020",
    ButtsEvans1983 = "butts_evans_1983",
    CaiSayles1996 = "cai_sayles_1996",
    Camargo2005 = "camargo_2005",
    CcmeAmmonia = "ccme_ammonia",
    Ceazan1989 = "ceazan_1989",
    Cfr7_360 = "cfr_7_360",
    Cgpm1901 = "cgpm_1901",
    ClarkeJohnston1999 = "clarke_johnston_1999",
    ClemsonCompost = "clemson_compost",
    Cole2010 = "cole_2010",
    ColeCaraco1998 = "cole_caraco_1998",
    Coughlan2022 = "coughlan_2022",
    Crank1975 = "crank_1975",
    CrusiusWanninkhof2003 = "crusius_wanninkhof_2003",
    Davies1962 = "davies_1962",
    DelBubba2003 = "del_bubba_2003",
    Driever2005 = "driever_2005",
    Droop1973 = "droop_1973",
    Emerson1975 = "emerson_1975",
    Emerson1975Lakes = "emerson_1975_lakes",
    En12580 = "en_12580",
    En16612_2019 = "en_16612_2019",
    En1991_1_1 = "en_1991_1_1",
    En572_1 = "en_572_1",
    En673 = "en_673",
    Epa625_1_89_023 = "epa_625_1_89_023",
    EpaAmmonia2013 = "epa_ammonia_2013",
    EpaNitrogen1993 = "epa_nitrogen_1993",
    Eu1143_2014 = "eu_1143_2014",
    Eu2016_1141 = "eu_2016_1141",
    Eu2017_1263 = "eu_2017_1263",
    Eu2019_1262 = "eu_2019_1262",
    Eu2022_1203 = "eu_2022_1203",
    Eu2025_1422 = "eu_2025_1422",
    Evans2000 = "evans_2000",
    Fang2007 = "fang_2007",
    FhwaHds6 = "fhwa_hds6",
    FhwaRd97_148 = "fhwa_rd_97_148",
    Fischer1979 = "fischer_1979",
    FosterFell2001 = "foster_fell_2001",
    GerloffKrombholz1966 = "gerloff_krombholz_1966",
    Good1985 = "good_1985",
    HairerWanner1996 = "hairer_wanner_1996",
    Haller1974 = "haller_1974",
    HiattGrady2008 = "hiatt_grady_2008",
    Hill1979 = "hill_1979",
    HooverBerkshire1969 = "hoover_berkshire_1969",
    Huser2016 = "huser_2016",
    HussnerLosch2007 = "hussner_losch_2007",
    HussnerMeyer2009 = "hussner_meyer_2009",
    HyndmanFan1996 = "hyndman_fan_1996",
    IapwsR1_76 = "iapws_r1_76",
    Iec60364_4_41 = "iec_60364_4_41",
    IrcR301_5 = "irc_r301_5",
    IshigamiHomma1990 = "ishigami_homma_1990",
    Iso2533 = "iso_2533",
    Iso5814 = "iso_5814",
    Iso6946 = "iso_6946",
    Iso7823 = "iso_7823",
    IversenJorgensen1993 = "iversen_jorgensen_1993",
    Jahne1987Diffusion = "jahne_1987_diffusion",
    Jahne1987Exchange = "jahne_1987_exchange",
    JainJuanes2009 = "jain_juanes_2009",
    JampeetongBrix2009 = "jampeetong_brix_2009",
    Janse2005 = "janse_2005",
    JonesElodea = "jones_elodea",
    Kell1975 = "kell_1975",
    Kelley1935 = "kelley_1935",
    Kestin1978 = "kestin_1978",
    Kim2007 = "kim_2007",
    Klein2022 = "klein_2022",
    Kleinhans2011 = "kleinhans_2011",
    Kolath2022 = "kolath_2022",
    Kong1994 = "kong_1994",
    Kragh2017 = "kragh_2017",
    Kroupova2008 = "kroupova_2008",
    Kunii1984 = "kunii_1984",
    LambeWhitman1969 = "lambe_whitman_1969",
    Larson2007 = "larson_2007",
    LiGregory1974 = "li_gregory_1974",
    Lindley1956 = "lindley_1956",
    LoseeWetzel1993 = "losee_wetzel_1993",
    LundDrake2021 = "lund_drake_2021",
    Madsen1993 = "madsen_1993",
    MadsenMorgan2021 = "madsen_morgan_2021",
    MalmbergMaryott1956 = "malmberg_maryott_1956",
    MartelloToth1990 = "martello_toth_1990",
    Martinsen2022 = "martinsen_2022",
    Matisoff1982 = "matisoff_1982",
    MatterMuller1981 = "matter_muller_1981",
    McdonnellWeeter1971 = "mcdonnell_weeter_1971",
    MeiZhang2013 = "mei_zhang_2013",
    Miettinen1999 = "miettinen_1999",
    Milicevic2023 = "milicevic_2023",
    MillingtonQuirk1961 = "millington_quirk_1961",
    MitchellTur1975 = "mitchell_tur_1975",
    Monod1949 = "monod_1949",
    MorrisJohnson1967 = "morris_johnson_1967",
    MorseMorin2005 = "morse_morin_2005",
    Nc15a02g0602 = "nc_15a_02g_0602",
    Nicklin1963 = "nicklin_1963",
    NielsenSandJensen1991 = "nielsen_sand_jensen_1991",
    Niosh94_110 = "niosh_94_110",
    NishiharaAckerman2007 = "nishihara_ackerman_2007",
    NrcsNeh633Ch26 = "nrcs_neh633_ch26",
    Oecd239_2014 = "oecd_239_2014",
    OliveiraTakahashi2021 = "oliveira_takahashi_2021",
    Osha1926_1153 = "osha_1926_1153",
    OwensMaris1964 = "owens_maris_1964",
    PalermoDoer1998 = "palermo_doer_1998",
    PalermoEpa1998 = "palermo_epa_1998",
    Pearson1905 = "pearson_1905",
    Peters1980 = "peters_1980",
    Peters1982 = "peters_1982",
    PlummerBusenberg1982 = "plummer_busenberg_1982",
    Reddy1983 = "reddy_1983",
    ReddyDebusk1985 = "reddy_debusk_1985",
    Reinemann1990 = "reinemann_1990",
    Rejmankova1992 = "rejmankova_1992",
    Rich2012 = "rich_2012",
    Roark2002 = "roark_2002",
    RockDensityTable = "rock_density_table",
    RodriguesThomaz2010 = "rodrigues_thomaz_2010",
    RogersYau1989 = "rogers_yau_1989",
    Rong2016 = "rong_2016",
    Room1986 = "room_1986",
    Sander2015 = "sander_2015",
    Sauder2018 = "sauder_2018",
    Scheffer2003 = "scheffer_2003",
    Schmidt2019 = "schmidt_2019",
    Scs1986 = "scs_1986",
    Seitzinger1991 = "seitzinger_1991",
    Shah2002 = "shah_2002",
    Shah2014 = "shah_2014",
    SherKaul1995 = "sher_kaul_1995",
    SherardDunnigan1989 = "sherard_dunnigan_1989",
    Si2014_538 = "si_2014_538",
    Sin2008 = "sin_2008",
    Smith1976 = "smith_1976",
    Sobol1993 = "sobol_1993",
    Sorrell1989 = "sorrell_1989",
    Spearman1904 = "spearman_1904",
    StanfordSmith1972 = "stanford_smith_1972",
    Steele2014 = "steele_2014",
    Stettler1983 = "stettler_1983",
    Tanner1993 = "tanner_1993",
    TerzaghiPeck1948 = "terzaghi_peck_1948",
    TerzaghiPeckMesri1996 = "terzaghi_peck_mesri_1996",
    Thomann1972 = "thomann_1972",
    TimmonsEbeling = "timmons_ebeling",
    Timoshenko1959 = "timoshenko_1959",
    UarkGrowingMedia = "uark_growing_media",
    UsaceFilterManual = "usace_filter_manual",
    UsdaSoilSurvey2017 = "usda_soil_survey_2017",
    Ushiki2017 = "ushiki_2017",
    VanHallerBowes1976 = "van_haller_bowes_1976",
    VanneckeVolcke2015 = "vannecke_volcke_2015",
    Veraart2011 = "veraart_2011",
    Verhagen2017 = "verhagen_2017",
    VermontNoxiousWeeds = "vermont_noxious_weeds",
    Wanninkhof2014 = "wanninkhof_2014",
    Warncke1995 = "warncke_1995",
    WatanabeBerja1983 = "watanabe_berja_1983",
    Weiss1974 = "weiss_1974",
    Westlake1967 = "westlake_1967",
    WhsQueensland = "whs_queensland",
    WollenbergPeters2009 = "wollenberg_peters_2009",
    Ziegler2015 = "ziegler_2015",
    Zou2018 = "zou_2018",
}

impl Source {
    /// The source with this key.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Source;
    /// assert_eq!(Source::find("driever_2005"), Some(Source::Driever2005));
    /// assert_eq!(Source::find("nobody_1900"), None);
    /// ```
    pub fn find(key: &str) -> Option<Self> {
        let place = Self::ALL.binary_search_by_key(&key, |source| source.key());
        Self::ALL.get(place.ok()?).copied()
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.key())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_is_snake_case_and_stands_once_in_order() {
        let mut last = "";
        for &source in Source::ALL {
            let key = source.key();
            let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
            assert!(key.chars().all(plain), "{key}");
            assert!(last < key, "{key} does not follow {last}");
            assert_eq!(Source::find(key), Some(source));
            last = key;
        }
    }

    #[test]
    fn a_source_is_named_as_its_key_is() {
        for &source in Source::ALL {
            let named = format!("{source:?}").replace('_', "").to_lowercase();
            assert_eq!(named, source.key().replace('_', ""));
        }
    }
}

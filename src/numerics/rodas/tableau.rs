//! Coefficients of the method, in the form that needs one matrix per step.

/// Stages of the method.
pub(super) const STAGES: usize = 6;

/// Diagonal coefficient.
pub(super) const GAMMA: f64 = 0.25;

/// Place of each stage within the step; the last two stand at its end.
pub(super) const NODE: [f64; STAGES] = [0.0, 0.386, 0.21, 0.63, 1.0, 1.0];

/// Weight of the time slope in each stage.
pub(super) const TIME_WEIGHT: [f64; STAGES] = [0.25, -0.1043, 0.1035, -0.0362, 0.0, 0.0];

/// Weight of the earlier stages in the state at which a stage is evaluated.
pub(super) const STATE_WEIGHT: [&[f64]; STAGES] = [
    &[],
    &[1.544],
    &[0.946_678_528_081_582_6, 0.255_701_169_898_328_4],
    &[
        3.314_825_187_068_521,
        2.896_124_015_972_201,
        0.998_641_913_997_781_7,
    ],
    &[
        1.221_224_509_226_641,
        6.019_134_481_288_629,
        12.537_083_329_320_87,
        -0.687_886_036_105_895,
    ],
    &[
        1.221_224_509_226_641,
        6.019_134_481_288_629,
        12.537_083_329_320_87,
        -0.687_886_036_105_895,
        1.0,
    ],
];

/// Weight of the earlier stages on the right side of a stage.
pub(super) const STAGE_WEIGHT: [&[f64]; STAGES] = [
    &[],
    &[-5.6688],
    &[-2.430_093_356_833_875, -0.206_359_915_709_191_5],
    &[
        -0.107_352_905_815_137_5,
        -9.594_562_251_023_355,
        -20.470_286_148_096_16,
    ],
    &[
        7.496_443_313_967_647,
        -10.246_804_314_643_52,
        -33.999_903_528_199_05,
        11.708_908_932_061_6,
    ],
    &[
        8.083_246_795_921_522,
        -7.981_132_988_064_893,
        -31.521_594_328_743_71,
        16.319_305_431_231_36,
        -6.058_818_238_834_054,
    ],
];

/// Weight of the stages in the two curvature terms of the continuous solution.
pub(super) const CURVE_WEIGHT: [[f64; 5]; 2] = [
    [
        10.126_235_083_445_86,
        -7.487_995_877_610_167,
        -34.800_918_615_557_47,
        -7.992_771_707_568_823,
        1.025_137_723_295_662,
    ],
    [
        -0.676_280_339_280_125_3,
        6.087_714_651_680_015,
        16.430_843_208_924_78,
        24.767_225_114_183_86,
        -6.594_389_125_716_872,
    ],
];

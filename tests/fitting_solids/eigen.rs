//! Principal values and axes against another library's, on random tensors.

use nalgebra::{Matrix3, SymmetricEigen, Vector3};
use proptest::prelude::*;
use spanwright::fitting::eigen::symmetric;

fn tensor(parts: [f64; 6]) -> [[f64; 3]; 3] {
    let [a, b, c, d, e, f] = parts;
    [[a, d, e], [d, b, f], [e, f, c]]
}

fn checked(tensor: [[f64; 3]; 3]) -> Result<(), TestCaseError> {
    let found = symmetric(tensor).map_err(|misfit| TestCaseError::fail(misfit.to_string()))?;
    let matrix = Matrix3::from_fn(|row, column| tensor[row][column]);
    let hair = 1e-12 * matrix.norm().max(f64::MIN_POSITIVE);
    let mut theirs: Vec<f64> = SymmetricEigen::new(matrix)
        .eigenvalues
        .iter()
        .copied()
        .collect();
    theirs.sort_by(f64::total_cmp);
    for (ours, theirs) in found.values().into_iter().zip(theirs) {
        prop_assert!((ours - theirs).abs() <= hair, "{:?}", found);
    }
    let axes = found.axes().map(Vector3::from);
    for (axis, value) in axes.iter().zip(found.values()) {
        prop_assert!(
            (matrix * axis - axis * value).norm() <= 10.0 * hair,
            "{:?}",
            found
        );
        prop_assert!((axis.norm() - 1.0).abs() < 1e-14);
    }
    prop_assert!((axes[0].cross(&axes[1]) - axes[2]).norm() < 1e-14);
    prop_assert!(axes[0].dot(&axes[1]).abs() < 1e-14);
    for axis in &axes[..2] {
        prop_assert!(axis.max() >= -axis.min() - 1e-8);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_tensor(parts in prop::array::uniform6(-100.0..100.0)) {
        checked(tensor(parts))?;
    }

    /// A bowling ball's: nearly alike values, hardly anything off the diagonal.
    #[test]
    fn a_ball_like_tensor(parts in prop::array::uniform6(-1.0..1.0), size in -12..-1) {
        let small = 10_f64.powi(size);
        let mut parts = parts.map(|part| part * small);
        for part in &mut parts[..3] {
            *part += 1500.0;
        }
        checked(tensor(parts))?;
    }

    /// Huge and tiny ones neither overflow nor vanish.
    #[test]
    fn any_size(parts in prop::array::uniform6(-1.0..1.0), size in -140..140) {
        checked(tensor(parts.map(|part| part * 10_f64.powi(size))))?;
    }
}

#[test]
fn plain_ones() {
    let values = |parts| symmetric(tensor(parts)).map(|found| found.values());
    assert_eq!(values([3.0, 1.0, 2.0, 0.0, 0.0, 0.0]), Ok([1.0, 2.0, 3.0]));
    assert_eq!(values([0.0; 6]), Ok([0.0; 3]));
    assert!(symmetric([[f64::NAN; 3]; 3]).is_err());
    assert!(symmetric(tensor([1.0, 2.0, 3.0, 0.0, f64::INFINITY, 0.0])).is_err());
    assert!(symmetric([[f64::MAX; 3]; 3]).is_ok());
    let nearly = symmetric(tensor([1.0, 1.0, 1.0, 1e-300, 0.0, 0.0]));
    assert_eq!(nearly.map(|found| found.values()), Ok([1.0; 3]));
}

using System.Globalization;

namespace LubeController.Plant.Numbers;

/// <summary>
/// Rounds what a transcendental function returned to twelve significant digits, so that tables built at load are the same
/// whatever library computed the function.
/// </summary>
internal static class RoundedTable
{
    internal static double Digits12(double value) =>
        double.Parse(value.ToString("E11", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}

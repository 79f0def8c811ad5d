using System;

namespace LubeController.Analysis.Specification;

/// <summary>
/// Marks what the control rules leave open. There the specification is no second reading of a rule but a regression model: it
/// holds the core to what it does, and a difference says that something changed, not that something is wrong.
/// </summary>
/// <param name="silent">What the rules do not say.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct | AttributeTargets.Method | AttributeTargets.Property)]
internal sealed class RegressionModelAttribute(string silent) : Attribute
{
    /// <summary>What the rules do not say.</summary>
    public string Silent { get; } = silent;
}

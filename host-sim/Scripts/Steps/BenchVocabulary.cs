using System.Collections.Generic;
using LubeController.Scripts.Signals;

namespace LubeController.Scripts.Steps;

/// <summary>What a bench can say and do for one plant under one controller: against it scripts are read.</summary>
/// <param name="Signals">Every signal that a run records.</param>
/// <param name="Faults">Every fault that can be set.</param>
public sealed record BenchVocabulary(SignalCatalogue Signals, IReadOnlyList<BenchFault> Faults);

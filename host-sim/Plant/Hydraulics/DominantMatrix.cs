using System;

namespace LubeController.Plant.Hydraulics;

/// <summary>A small dense matrix in which every column's diagonal outweighs the rest of it, so that no pivot is needed.</summary>
internal sealed class DominantMatrix(int size)
{
    private readonly double[] _cells = new double[size * size];

    internal ref double this[int row, int column] => ref _cells[(row * size) + column];

    internal void SetToIdentity()
    {
        Array.Clear(_cells);
        for (int i = 0; i < size; i++)
            _cells[(i * size) + i] = 1;
    }

    /// <summary>Factors the matrix in place.</summary>
    internal void Factor()
    {
        for (int k = 0; k < size; k++)
        {
            double inverse = 1 / _cells[(k * size) + k];
            for (int i = k + 1; i < size; i++)
            {
                double factor = _cells[(i * size) + k] * inverse;
                if (factor == 0)
                    continue;
                _cells[(i * size) + k] = factor;
                for (int j = k + 1; j < size; j++)
                    _cells[(i * size) + j] -= factor * _cells[(k * size) + j];
            }
        }
    }

    /// <summary>Solves the factored system; the right side becomes the answer.</summary>
    internal void Solve(double[] x)
    {
        for (int i = 1; i < size; i++)
        {
            for (int j = 0; j < i; j++)
                x[i] -= _cells[(i * size) + j] * x[j];
        }

        for (int i = size - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < size; j++)
                x[i] -= _cells[(i * size) + j] * x[j];
            x[i] /= _cells[(i * size) + i];
        }
    }
}
